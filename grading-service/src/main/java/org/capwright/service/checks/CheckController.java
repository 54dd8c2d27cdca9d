package org.capwright.service.checks;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.service.http.Accepted;
import org.capwright.service.http.Languages;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartHttpServletRequest;
import org.springframework.web.util.WebUtils;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Holds a grade against bodies. */
@RestController
@Tag(name = "Checks")
final class CheckController {

    private static final MediaType SVG = new MediaType("image", "svg+xml");

    /** RFC 7111 and RFC 4180, section 3. */
    private static final MediaType CSV =
            new MediaType(new MediaType("text", "csv"), Map.of("charset", "UTF-8", "header", "present"));

    private static final List<MediaType> ANSWERS =
            List.of(MediaType.APPLICATION_JSON, CSV, SVG, MediaType.APPLICATION_PDF);

    private final RequestBodies bodies;
    private final JsonMapper mapper;

    CheckController(RequestBodies bodies, JsonMapper mapper) {
        this.bodies = bodies;
        this.mapper = mapper;
    }

    /** Checks a size run, a spec table or outlines, and answers in the media type that the caller likes best. */
    @Operation(operationId = "createCheck", summary = "Hold the jumps of a grade against the jumps of bodies")
    @PostMapping("/v1/checks")
    ResponseEntity<byte[]> create(
            HttpServletRequest request,
            @Parameter(
                            description =
                                    "For a spec table or outlines: unit of the answer; fileUnits, or else mm, if left"
                                            + " out. Not for JSON and forms.",
                            example = "cm",
                            schema = @Schema(allowableValues = {"mm", "cm", "in"}))
                    @RequestParam(name = "units", required = false)
                    Optional<String> units,
            @Parameter(
                            description =
                                    "For a spec table: unit of its lengths, where it states none. For outlines: their"
                                            + " unit, before what the drawing states. Not for JSON and forms.",
                            example = "cm",
                            schema = @Schema(allowableValues = {"mm", "cm", "in"}))
                    @RequestParam(name = "fileUnits", required = false)
                    Optional<String> fileUnits,
            @Parameter(
                            description =
                                    "For a spec table or outlines: the base size, where the file does not name it. Not"
                                            + " for JSON and forms.",
                            example = "40")
                    @RequestParam(name = "baseSize", required = false)
                    Optional<String> baseSize,
            @Parameter(
                            description =
                                    "For a spec table or outlines: id of the size table of bodies. Not for JSON and"
                                            + " forms.",
                            example = "women-en-13402-3-bust")
                    @RequestParam(name = "sizeTable", required = false)
                    Optional<String> sizeTable,
            @Parameter(
                            description =
                                    "For a spec table: what rows or columns are, by their names, as a JSON object. The"
                                            + " form says it in the field mapping. Not for JSON and forms.",
                            example = "{\"Armloch\":\"armhole\"}")
                    @RequestParam(name = "mapping", required = false)
                    Optional<String> mapping,
            @PictureParameter @RequestParam(name = "picture", defaultValue = "jumps") String picture)
            throws IOException {
        Picture drawn = Picture.of(picture);
        MediaType answer = Accepted.best(request, ANSWERS);
        Optional<MediaType> file = ForeignBodies.type(request.getContentType());
        boolean parameters = units.isPresent()
                || fileUnits.isPresent()
                || baseSize.isPresent()
                || sizeTable.isPresent()
                || mapping.isPresent();
        MultipartHttpServletRequest form = WebUtils.getNativeRequest(request, MultipartHttpServletRequest.class);
        GradeUnderCheck order;
        if (file.isPresent()) {
            order = ForeignBodies.read(
                    request, file.get(), ForeignBodies.said(units, fileUnits, baseSize, sizeTable, mapping, mapper));
        } else if (parameters) {
            throw new ProblemException(Problem.of(
                    ProblemKind.BAD_REQUEST,
                    "The parameters units, fileUnits, baseSize, sizeTable and mapping are for text/csv, workbooks and"
                            + " image/vnd.dxf; JSON and forms say it in the body."));
        } else if (form != null) {
            order = Uploads.read(form, bodies);
        } else {
            order = CheckReader.read(body(request));
        }
        return answered(order.in(Languages.of(request)), answer, drawn);
    }

    /** Checks files that are sent as a form, by an address of their own. */
    @Operation(operationId = "createCheckOfFiles", summary = "Check a spec table or outlines that are sent as a form")
    @PostMapping("/v1/checks/uploads")
    ResponseEntity<byte[]> upload(
            HttpServletRequest request,
            @PictureParameter @RequestParam(name = "picture", defaultValue = "jumps") String picture)
            throws IOException {
        Picture drawn = Picture.of(picture);
        MediaType answer = Accepted.best(request, ANSWERS);
        MultipartHttpServletRequest form = WebUtils.getNativeRequest(request, MultipartHttpServletRequest.class);
        if (form == null) {
            throw new ProblemException(Problem.of(
                    ProblemKind.UNSUPPORTED_MEDIA_TYPE, "The body must be a form, sent as multipart/form-data."));
        }
        return answered(Uploads.read(form, bodies).in(Languages.of(request)), answer, drawn);
    }

    private ResponseEntity<byte[]> answered(GradeUnderCheck order, MediaType answer, Picture drawn) throws IOException {
        return ResponseEntity.ok()
                .contentType(answer)
                .cacheControl(CacheControl.noStore())
                .varyBy(HttpHeaders.ACCEPT, HttpHeaders.ACCEPT_LANGUAGE)
                .body(written(order, answer, drawn));
    }

    private JsonNode body(HttpServletRequest request) throws IOException {
        try {
            return bodies.read(request);
        } catch (ProblemException e) {
            // This address takes more types than the others.
            throw e.problem().status() == ProblemKind.UNSUPPORTED_MEDIA_TYPE.status() ? ForeignBodies.unsupported() : e;
        }
    }

    private byte[] written(GradeUnderCheck order, MediaType type, Picture picture) throws IOException {
        if (type.equals(SVG)) {
            return picture.drawn(order).getBytes(StandardCharsets.UTF_8);
        } else if (type.equals(MediaType.APPLICATION_PDF)) {
            return CheckReport.pdf(order);
        }
        return type.equals(CSV) ? CheckReport.csv(order) : mapper.writeValueAsBytes(CheckReport.answer(order));
    }

    @Target(ElementType.PARAMETER)
    @Retention(RetentionPolicy.RUNTIME)
    @Parameter(
            description = "For SVG: the jumps beside those of the body, or the nest with its crossings marked.",
            example = "nest",
            schema =
                    @Schema(
                            allowableValues = {"jumps", "nest"},
                            defaultValue = "jumps"))
    private @interface PictureParameter {}
}
