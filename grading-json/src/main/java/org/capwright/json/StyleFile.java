package org.capwright.json;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.capwright.GradeRules;
import org.capwright.PieceStep;
import org.capwright.Pieces;
import org.capwright.SizeRun;
import org.capwright.StructuredSleeve;
import org.capwright.grade.Sizes;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.json.style.SizeRunWriter;
import org.capwright.lay.LayWatch;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.words.Language;
import org.capwright.words.Text;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.json.JsonMapper;

/**
 * A style with its sizes and grade increments as JSON: the body of {@code POST /v1/size-runs}, and the file that the page saves. What is drafted from it has the same bytes as the answers of the service.
 * Immutable, and safe for many threads.
 */
public final class StyleFile {

    private static final JsonMapper MAPPER = StrictJson.mapper().build();

    private final SizeRunRequest request;

    private StyleFile(SizeRunRequest request) {
        this.request = request;
    }

    /**
     * A style made by the steps of the library.
     *
     * @param sleeve the style in its base size
     * @param rules how it grows
     * @param sizes its sizes
     * @return the style with everything else as usual
     * @throws InvalidMeasuresException if a list of increments has not one per interval
     */
    public static StyleFile of(StructuredSleeve sleeve, GradeRules rules, Sizes sizes) {
        return new StyleFile(
                SizeRunRequest.usual(sleeve.title(), sleeve.style(), sleeve.dimensions(), rules.over(sizes), sizes));
    }

    /**
     * The same style, its pieces finished otherwise.
     *
     * @param finish what is not as usual, in the unit of the style
     * @return a new style
     */
    public StyleFile finished(UnaryOperator<PieceStep> finish) {
        return new StyleFile(
                request.finished(finish.apply(PieceStep.usual(request.unit())).options()));
    }

    /**
     * The same style in a language: labels, sewing order and covers. The JSON names none, as it is for every reader.
     *
     * @param language English unless it is said
     * @return a new style
     */
    public StyleFile in(Language language) {
        return new StyleFile(request.in(language));
    }

    /**
     * Reads a style.
     *
     * @param file JSON in UTF-8
     * @return the style
     * @throws IOException if the file cannot be read
     * @throws RefusedRequestException if it is no JSON or no style, with everything that is wrong at its fields
     */
    public static StyleFile read(Path file) throws IOException {
        return read(Files.readAllBytes(file));
    }

    /**
     * Reads a style.
     *
     * @param json JSON in UTF-8
     * @return the style
     * @throws RefusedRequestException if it is no JSON or no style, with everything that is wrong at its fields
     */
    public static StyleFile read(byte[] json) {
        try {
            return new StyleFile(SizeRunReader.read(MAPPER.readTree(json)));
        } catch (JacksonException e) {
            throw new RefusedRequestException(List.of(FieldViolation.of("", place(e.getLocation()), Optional.empty())));
        }
    }

    private static Text place(@Nullable TokenStreamLocation at) {
        return at == null
                ? Text.of("is not JSON")
                : Text.of("is not JSON: line {line}, column {column}")
                        .with("line", at.getLineNr())
                        .with("column", at.getColumnNr());
    }

    /**
     * The style in its base size.
     *
     * @return the same in the steps of the library
     */
    public StructuredSleeve sleeve() {
        return StructuredSleeve.of(request.title(), request.style(), request.dimensions());
    }

    /**
     * How it grows.
     *
     * @return the increments of every dimension that has any
     */
    public GradeRules rules() {
        return GradeRules.of(request.rules());
    }

    /**
     * Its sizes.
     *
     * @return names, and which of them is the base
     */
    public Sizes sizes() {
        return new Sizes(request.sizes(), request.base());
    }

    /**
     * Drafts every size.
     *
     * @return the run
     * @throws RefusedRequestException if a size cannot be drafted, with what would work at the fields of the JSON
     */
    public SizeRun grade() {
        try {
            return request.graded();
        } catch (InvalidMeasuresException e) {
            throw request.refused(e);
        }
    }

    /**
     * Drafts every size with its pieces, as the JSON asks for them.
     *
     * @return the pieces, which write every file
     * @throws RefusedRequestException if a size or a piece cannot be drafted, with what would work at the fields of the JSON
     */
    public Pieces pieces() {
        try {
            Pieces pieces = request.pieces(request.graded());
            return request.materials()
                    .map(asked -> pieces.withMaterials(asked.needs(pieces.patterns(), LayWatch.UNWATCHED)))
                    .orElse(pieces);
        } catch (InvalidMeasuresException e) {
            throw request.refused(e);
        }
    }

    /**
     * The style as JSON; what is as usual is left out.
     *
     * @return UTF-8, indented, with a line feed at its end; read again, it is the same style
     */
    public byte[] written() {
        return (MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(SizeRunWriter.written(request)) + "\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    /**
     * Writes the style as JSON.
     *
     * @param file where; what was there is replaced
     * @throws IOException if it cannot be written
     */
    public void write(Path file) throws IOException {
        Files.write(file, written());
    }
}
