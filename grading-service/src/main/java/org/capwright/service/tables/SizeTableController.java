package org.capwright.service.tables;

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
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.NearestWord;
import org.capwright.json.tables.TableReader;
import org.capwright.quantity.Unit;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.Interval;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;
import org.capwright.words.Text;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Shows the published size tables and checks those of callers. */
@RestController
@Tag(name = "Size tables")
final class SizeTableController {

    private static final CacheControl CACHE =
            CacheControl.maxAge(Duration.ofHours(1)).cachePublic();

    private final RequestBodies bodies;

    SizeTableController(RequestBodies bodies) {
        this.bodies = bodies;
    }

    /** Lists the tables. */
    @Operation(operationId = "listSizeTables", summary = "List the published size tables with their sources")
    @GetMapping(path = "/v1/size-tables", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<SizeTableAnswer.Listing> list() {
        return ResponseEntity.ok()
                .cacheControl(CACHE)
                .body(new SizeTableAnswer.Listing(
                        SizeTables.all().stream().map(TableWriter::info).toList()));
    }

    /** Shows one table. */
    @Operation(
            operationId = "getSizeTable",
            summary = "Show a size table: values, increments, and where each comes from")
    @GetMapping(path = "/v1/size-tables/{id}", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<SizeTableAnswer> get(
            @IdParameter @PathVariable("id") String id,
            @UnitsParameter @RequestParam(name = "units", defaultValue = "mm") String units) {
        SizeTable table = SizeTables.find(id).orElseThrow(() -> new ProblemException(unknown(id)));
        return ResponseEntity.ok().cacheControl(CACHE).body(new TableWriter(unit(units)).table(table));
    }

    /** Shows what a table says of a body between its sizes. */
    @Operation(
            operationId = "getSizeTableFigures",
            summary = "Show the figures for a bust girth, or whatever orders the table, at or between two sizes")
    @GetMapping(path = "/v1/size-tables/{id}/figures", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<SizeTableAnswer.Figures> figures(
            @IdParameter @PathVariable("id") String id,
            @Parameter(
                            description = "Value of the dimension that orders the sizes, in the unit of the answer.",
                            example = "93")
                    @RequestParam("at")
                    String at,
            @UnitsParameter @RequestParam(name = "units", defaultValue = "mm") String units) {
        SizeTable table = SizeTables.find(id).orElseThrow(() -> new ProblemException(unknown(id)));
        Unit unit = unit(units);
        BodyDimension key = table.info()
                .key()
                .orElseThrow(() ->
                        WrongParameter.of("at", "has no use with this table: no body dimension orders its sizes", at));
        Interval range = Places.range(table, key);
        double place = Places.read(at, unit)
                .filter(range::contains)
                .orElseThrow(() -> WrongParameter.of(
                        "at",
                        Text.of("must be a length of {measure} from {least} to {greatest}")
                                .with("measure", Text.of(key.id()))
                                .with("least", Text.figures(unit.format(range.lower())))
                                .with("greatest", Text.figures(unit.format(range.upper()) + " " + unit.symbol())),
                        at));
        return ResponseEntity.ok().cacheControl(CACHE).body(new TableWriter(unit).figures(table, key, place));
    }

    /** Checks a table of the caller's own. */
    @Operation(
            operationId = "checkSizeTable",
            summary = "Check a size table of your own and show its increments; nothing is kept")
    @PostMapping(path = "/v1/size-tables", produces = MediaType.APPLICATION_JSON_VALUE)
    ResponseEntity<SizeTableAnswer> check(
            HttpServletRequest request, @UnitsParameter @RequestParam(name = "units", defaultValue = "mm") String units)
            throws IOException {
        Unit unit = unit(units);
        FoundViolations found = new FoundViolations(unit);
        Optional<SizeTable> table = TableReader.read(bodies.read(request), "", found);
        found.refuse();
        return ResponseEntity.ok()
                .cacheControl(CacheControl.noStore())
                .body(new TableWriter(unit).table(table.orElseThrow()));
    }

    private static Problem unknown(String id) {
        List<String> ids = SizeTables.all().stream().map(SizeTable::id).toList();
        return Problem.of(
                ProblemKind.NOT_FOUND,
                NearestWord.to(id, ids)
                        .map(near -> Text.of("There is no size table of this id; did you mean {near}?")
                                .with("near", near))
                        .orElse(Text.of("There is no size table of this id; GET /v1/size-tables lists them.")));
    }

    private static Unit unit(String units) {
        return Unit.find(units).orElseThrow(() -> WrongParameter.of("units", "must be one of mm, cm, in", units));
    }

    @Target(ElementType.PARAMETER)
    @Retention(RetentionPolicy.RUNTIME)
    @Parameter(
            description = "Unit of the answer.",
            example = "cm",
            schema =
                    @Schema(
                            allowableValues = {"mm", "cm", "in"},
                            defaultValue = "mm"))
    private @interface UnitsParameter {}

    @Target(ElementType.PARAMETER)
    @Retention(RetentionPolicy.RUNTIME)
    @Parameter(description = "Id of the table.", example = "women-en-13402-3-bust")
    private @interface IdParameter {}
}
