package org.capwright.service.madetomeasure;

import java.io.IOException;
import java.util.List;
import org.capwright.json.madetomeasure.MeasureReader;
import org.capwright.json.madetomeasure.MeasureRequest;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.quantity.Unit;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.words.Language;
import org.springframework.http.MediaType;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A sleeve set for one wearer whose improbable measurements hold the order instead of refusing it. */
public final class HeldMeasures {

    private final MeasureRequest order;
    private final SizeRunResult result;
    private final List<FieldViolation> questions;

    private HeldMeasures(MeasureRequest order, SizeRunResult result, List<FieldViolation> questions) {
        this.order = order;
        this.result = result;
        this.questions = questions;
    }

    /**
     * Drafts the set.
     *
     * @param tree a body of {@code POST /v1/made-to-measure}
     * @param language what is said to the caller, and on every sheet
     * @return the set
     * @throws RefusedRequestException with everything that is wrong
     */
    public static HeldMeasures draft(JsonNode tree, Language language) {
        FoundViolations questions = new FoundViolations(
                tree.path("units").asStringOpt().flatMap(Unit::find).orElse(Unit.MILLIMETRE));
        MeasureRequest order = MeasureReader.held(tree, questions).in(language);
        try {
            return new HeldMeasures(
                    order,
                    SizeRunService.draft(order.run()),
                    questions.list().stream()
                            .map(question -> question.in(language))
                            .toList());
        } catch (RefusedRequestException e) {
            // What cannot be drafted is likely to be what is improbable.
            FoundViolations found = new FoundViolations(order.run().unit());
            questions.list().forEach(found::add);
            order.places().add(e, found);
            found.refuse();
            throw e;
        }
    }

    /**
     * What is improbable and was not confirmed.
     *
     * @return in the order in which it was found; empty if nothing is
     */
    public List<FieldViolation> questions() {
        return questions;
    }

    /**
     * The set as it is answered.
     *
     * @param form the form; JSON tells what was estimated as well
     * @param mapper writes JSON
     * @return the bytes
     * @throws IOException if it cannot be written
     * @throws RefusedRequestException if it cannot be written in this form
     */
    public byte[] written(SizeRunFormat form, JsonMapper mapper) throws IOException {
        return form.mediaType().equals(MediaType.APPLICATION_JSON)
                ? mapper.writeValueAsBytes(MeasureController.answer(order, result))
                : SizeRunService.written(result, form);
    }
}
