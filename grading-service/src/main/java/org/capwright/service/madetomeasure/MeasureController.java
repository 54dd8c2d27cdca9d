package org.capwright.service.madetomeasure;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.check.Estimate;
import org.capwright.check.Finding;
import org.capwright.check.NearestSize;
import org.capwright.check.Severity;
import org.capwright.check.SurveyOpinion;
import org.capwright.json.madetomeasure.MeasureReader;
import org.capwright.json.madetomeasure.MeasureRequest;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.quantity.Decimals;
import org.capwright.quantity.Unit;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.sizerun.SizeRunFormat;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.service.sizerun.SizeRunService;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.survey.Survey;
import org.capwright.words.Language;
import org.capwright.words.Text;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.json.JsonMapper;

/** Drafts a sleeve set for one wearer. What is known of the wearer lives as long as the request. */
@RestController
@Tag(name = "Made to measure")
final class MeasureController {

    /** Names, never values, so that forms without room for a note still tell what was not measured. */
    private static final String ESTIMATED = "Capwright-Estimated";

    /** Codes of what speaks against the sleeve, for the same reason. */
    private static final String FINDINGS = "Capwright-Findings";

    private final RequestBodies bodies;
    private final SizeRunService drafting;
    private final JsonMapper mapper;

    MeasureController(RequestBodies bodies, SizeRunService drafting, JsonMapper mapper) {
        this.bodies = bodies;
        this.drafting = drafting;
        this.mapper = mapper;
    }

    /** Drafts the set and answers in the media type that the caller likes best. */
    @Operation(operationId = "createMadeToMeasure", summary = "Draft a sleeve set for one wearer")
    @PostMapping("/v1/made-to-measure")
    ResponseEntity<byte[]> create(HttpServletRequest request) throws IOException {
        return drafted(request, drafting.accepted(request));
    }

    /** Drafts the set and answers with a file, whatever Accept says. */
    @Operation(
            operationId = "createMadeToMeasureFile",
            summary = "Draft a sleeve set for one wearer and fetch one file")
    @PostMapping("/v1/made-to-measure/files/{format}")
    ResponseEntity<byte[]> file(
            HttpServletRequest request,
            @Parameter(description = "The end of the file's name.", example = "pdf") @PathVariable("format")
                    String format)
            throws IOException {
        return drafted(request, drafting.named(format));
    }

    private ResponseEntity<byte[]> drafted(HttpServletRequest request, SizeRunFormat rendering) throws IOException {
        MeasureRequest order = MeasureReader.read(bodies.read(request)).in(Languages.of(request));
        byte[] body;
        Stream<String> findings;
        try {
            SizeRunResult result = SizeRunService.draft(order.run());
            findings = result.findings().stream()
                    .filter(finding -> finding.severity() != Severity.INFO)
                    .map(Finding::code);
            body = rendering.mediaType().equals(MediaType.APPLICATION_JSON)
                    ? mapper.writeValueAsBytes(answer(order, result))
                    : SizeRunService.written(result, rendering);
        } catch (RefusedRequestException e) {
            order.places().refuse(e, order.run().unit());
            throw e;
        }
        ResponseEntity<byte[]> response = SizeRunService.response(order.run(), rendering, body);
        HttpHeaders headers = new HttpHeaders();
        headers.putAll(response.getHeaders());
        name(
                headers,
                ESTIMATED,
                order.estimates().stream().map(estimate -> estimate.dimension().id()));
        name(headers, FINDINGS, findings);
        return ResponseEntity.status(response.getStatusCode()).headers(headers).body(body);
    }

    private static void name(HttpHeaders headers, String header, Stream<String> names) {
        String all = names.distinct().collect(Collectors.joining(", "));
        if (!all.isEmpty()) {
            headers.set(header, all);
        }
    }

    static MeasureAnswer answer(MeasureRequest order, SizeRunResult result) {
        Unit unit = order.run().unit();
        Language language = order.run().language();
        return new MeasureAnswer(
                unit.symbol(),
                order.nearest().map(MeasureController::nearest),
                order.nearest().map(NearestSize::departures).orElse(List.of()).stream()
                        .map(departure -> new MeasureAnswer.DepartureAnswer(
                                departure.dimension().id(),
                                shown(departure.wearer(), unit),
                                shown(departure.table(), unit),
                                shown(departure.wearer() - departure.table(), unit),
                                departure.nearest()))
                        .toList(),
                order.opinion()
                        .map(opinion -> order.estimates().stream()
                                .map(estimate -> estimate(estimate, opinion.survey(), unit, language))
                                .toList())
                        .orElse(List.of()),
                names(order.confirmed().stream().toList()),
                names(order.opinion().map(SurveyOpinion::unquestioned).orElse(List.of())),
                order.opinion().map(opinion -> together(opinion, unit)),
                SizeRunService.answer(result));
    }

    private static MeasureAnswer.NearestAnswer nearest(NearestSize nearest) {
        return new MeasureAnswer.NearestAnswer(
                nearest.table().id(),
                nearest.size(),
                nearest.table().info().key().map(BodyDimension::id).orElse(""),
                nearest.table().info().source());
    }

    private static MeasureAnswer.TogetherAnswer together(SurveyOpinion opinion, Unit unit) {
        return new MeasureAnswer.TogetherAnswer(
                opinion.survey().id(),
                Decimals.clean(opinion.rarity()),
                opinion.expectations().stream()
                        .map(expected -> new MeasureAnswer.ExpectationAnswer(
                                expected.dimension().id(),
                                shown(expected.value(), unit),
                                shown(expected.range().lower(), unit),
                                shown(expected.range().upper(), unit)))
                        .toList(),
                names(opinion.beyond()));
    }

    private static MeasureAnswer.EstimateAnswer estimate(
            Estimate estimate, Survey survey, Unit unit, Language language) {
        return new MeasureAnswer.EstimateAnswer(
                estimate.dimension().id(),
                shown(estimate.prediction().estimate(), unit),
                shown(estimate.prediction().interval().lower(), unit),
                shown(estimate.prediction().interval().upper(), unit),
                estimate.prediction().probability(),
                names(estimate.from()),
                names(estimate.beyond()),
                Text.of("{survey}; {people} people")
                        .with("survey", survey.source())
                        .with("people", survey.people())
                        .in(language));
    }

    private static List<String> names(List<BodyDimension> dimensions) {
        return dimensions.stream().map(BodyDimension::id).toList();
    }

    private static double shown(double millimetres, Unit unit) {
        return unit.figure(millimetres);
    }
}
