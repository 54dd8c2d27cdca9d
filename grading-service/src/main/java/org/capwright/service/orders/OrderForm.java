package org.capwright.service.orders;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.json.order.OrderRequest;
import org.capwright.json.order.StyleDocument;
import org.capwright.quantity.Unit;
import org.capwright.service.http.access.Caller;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.service.store.Store;
import org.capwright.service.styles.StyleRevision;
import org.capwright.service.styles.StyleShelf;
import org.capwright.tables.BodyDimension;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What comes before an order: what there is to measure, and what the order would be. Neither keeps anything. */
@Component
final class OrderForm {

    private final Store store;
    private final OrderDraft draft;
    private final JsonMapper mapper;

    OrderForm(Store store, SizeRunService drafting, JsonMapper mapper) {
        this.store = store;
        this.draft = new OrderDraft(drafting.forms(), mapper);
        this.mapper = mapper;
    }

    /** What there is to measure for a style. */
    OrderFormAnswer asked(Caller caller, String id) {
        StyleRevision style = OrderDesk.taking(revision(caller, id, Optional.empty()));
        JsonNode body = mapper.readTree(style.body());
        Unit unit = body.path("units").asStringOpt().flatMap(Unit::find).orElse(Unit.MILLIMETRE);
        List<OrderFormAnswer.Measurement> measurements = new ArrayList<>();
        drafted(body).forEach(dimension -> measurements.add(measurement(dimension, true, unit)));
        List.of(BodyDimension.BUST_GIRTH, BodyDimension.STATURE)
                .forEach(dimension -> measurements.add(measurement(dimension, false, unit)));
        return new OrderFormAnswer(
                id, style.name(), style.revision(), unit.symbol(), body.hasNonNull("ease"), measurements);
    }

    /** What made to measure drafts a style from. */
    private static List<BodyDimension> drafted(JsonNode style) {
        List<BodyDimension> needed = new ArrayList<>(List.of(BodyDimension.UPPER_ARM_GIRTH));
        JsonNode ease = style.path("ease");
        if (style.path("underSleeve").isObject()) {
            needed.add(BodyDimension.ARM_LENGTH);
            if (ease.hasNonNull("elbow")) {
                needed.add(BodyDimension.ELBOW_GIRTH);
            }
            needed.add(BodyDimension.WRIST_GIRTH);
        }
        if (ease.hasNonNull("armhole") || style.path("overlay").isObject()) {
            needed.add(BodyDimension.ARMSCYE_GIRTH);
        }
        return needed;
    }

    private static OrderFormAnswer.Measurement measurement(BodyDimension dimension, boolean drafted, Unit unit) {
        return new OrderFormAnswer.Measurement(
                dimension.id(),
                drafted,
                dimension.definition(),
                shown(dimension.plausible().lower(), unit),
                shown(dimension.plausible().upper(), unit));
    }

    private static double shown(double millimetres, Unit unit) {
        return unit.figure(millimetres);
    }

    /** What an order would be. */
    OrderPreview tried(Caller caller, String id, JsonNode tree) {
        StyleRevision latest = OrderDesk.taking(revision(caller, id, Optional.empty()));
        OrderRequest request = OrderRequest.read(tree);
        request.refuseRemake();
        StyleRevision style = request.revision().isEmpty() ? latest : revision(caller, id, request.revision());
        JsonNode body = mapper.readTree(style.body());
        request.checkUnits(body.path("units").asString(""));
        return draft.preview(StyleDocument.of(body), style.revision(), request.body());
    }

    private StyleRevision revision(Caller caller, String id, Optional<Integer> revision) {
        return store.transaction(database -> new StyleShelf(database, caller).get(id, revision));
    }
}
