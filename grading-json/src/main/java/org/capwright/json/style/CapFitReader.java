package org.capwright.json.style;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.json.schema.RequestObject;
import org.capwright.measure.Dimension;

/** Reads which of bicep, cap height and cap ease follows from the others. */
final class CapFitReader {

    private static final String EASE = "capEase";

    private final RequestObject sleeve;
    private final Optional<RequestObject> front;
    private final Optional<RequestObject> back;
    private final Map<Dimension, Double> values;

    CapFitReader(
            RequestObject sleeve,
            Optional<RequestObject> front,
            Optional<RequestObject> back,
            Map<Dimension, Double> values) {
        this.sleeve = sleeve;
        this.front = front;
        this.back = back;
        this.values = values;
    }

    CapFit read() {
        boolean inFront = front.map(half -> half.has(EASE)).orElse(false);
        boolean behind = back.map(half -> half.has(EASE)).orElse(false);
        if (sleeve.has(EASE) && (inFront || behind)) {
            sleeve.refuse(EASE, "contradicts the eases of front and back; give either one or the other");
        }
        if (inFront || behind) {
            return halves();
        }
        if (!sleeve.has(EASE)) {
            need("bicep", "is missing; give it, or leave out only one of bicep and capHeight and give capEase");
            need("capHeight", "is missing; give it, or leave out only one of bicep and capHeight and give capEase");
            return new CapFit.Given();
        }
        needArmhole();
        Optional<CapEase> ease = ease(sleeve);
        boolean bicep = sleeve.has("bicep");
        boolean height = sleeve.has("capHeight");
        if (bicep && height) {
            sleeve.refuse(EASE, "follows from bicep and capHeight; leave out one of the three");
        } else if (!bicep && !height) {
            sleeve.refuse(EASE, "leaves bicep and capHeight both open; give exactly one of them");
        }
        if (ease.isEmpty() || bicep == height) {
            return new CapFit.Given();
        }
        return bicep ? new CapFit.CapHeightFor(ease.get()) : new CapFit.BicepFor(ease.get());
    }

    private CapFit halves() {
        Optional<CapEase> inFront = front.flatMap(CapFitReader::ease);
        Optional<CapEase> behind = back.flatMap(CapFitReader::ease);
        needOther(front, "/front/capEase", "back");
        needOther(back, "/back/capEase", "front");
        need("bicep", "is missing; cap height and front width follow from it and the eases of front and back");
        if (sleeve.has("capHeight")) {
            sleeve.refuse("capHeight", "follows from the eases of front and back; leave it out");
        }
        front.filter(half -> half.has("width"))
                .ifPresent(half -> half.refuse("width", "follows from the eases of front and back; leave it out"));
        needArmhole();
        return inFront.isPresent() && behind.isPresent()
                ? new CapFit.HalvesFor(inFront.get(), behind.get())
                : new CapFit.Given();
    }

    private void needOther(Optional<RequestObject> half, String field, String given) {
        if (!half.map(object -> object.has(EASE)).orElse(false)) {
            sleeve.refuseAt(field, "is missing; with an ease for the " + given + " the other half needs one too");
        }
    }

    private void need(String field, String reason) {
        if (!sleeve.has(field)) {
            sleeve.refuse(field, reason);
        }
    }

    private void needArmhole() {
        if (!values.containsKey(Dimension.ARMHOLE) && !sleeve.has("armhole")) {
            sleeve.refuse("armhole", "is missing; a cap ease is measured against it");
        }
    }

    private static Optional<CapEase> ease(RequestObject from) {
        OptionalDouble share = from.percentage(EASE);
        if (share.isPresent()) {
            return Optional.of(new CapEase.Share(share.getAsDouble()));
        }
        OptionalDouble length = from.easeLength(EASE);
        return length.isPresent() ? Optional.of(new CapEase.Length(length.getAsDouble())) : Optional.empty();
    }
}
