package org.capwright.service.checks;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.charset.Charset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.Thresholds;
import org.capwright.exchange.ForeignFile;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.tables.TableReader;
import org.capwright.quantity.Unit;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.tables.SizeTable;
import org.capwright.words.Text;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import tools.jackson.databind.json.JsonMapper;

/** Reads a spec table or outlines of a style drawn elsewhere, with what the parameters say of them. */
final class ForeignBodies {

    static final MediaType CSV = new MediaType("text", "csv");
    static final MediaType XLSX = new MediaType("application", "vnd.openxmlformats-officedocument.spreadsheetml.sheet");
    static final MediaType DXF = new MediaType("image", "vnd.dxf");

    private static final int LONGEST_LABEL = 20;

    private ForeignBodies() {}

    /** The media type of the body, if it is a file of a style drawn elsewhere. */
    static Optional<MediaType> type(@Nullable String given) {
        try {
            MediaType type = MediaType.parseMediaType(given == null ? "" : given);
            return List.of(CSV, XLSX, DXF).stream()
                    .filter(one -> one.equalsTypeAndSubtype(type))
                    .findFirst();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** All parameters that are wrong are named at once. */
    static ForeignReading said(
            Optional<String> units,
            Optional<String> fileUnits,
            Optional<String> baseSize,
            Optional<String> sizeTable,
            Optional<String> mapping,
            JsonMapper mapper) {
        List<FieldViolation> wrong = new ArrayList<>();
        Map<String, String> rows = RowMapping.of(mapping, mapper, wrong);
        Optional<Unit> unit = unit("units", units, wrong);
        Optional<Unit> fileUnit = unit("fileUnits", fileUnits, wrong);
        if (baseSize.filter(label -> label.isBlank() || label.length() > LONGEST_LABEL)
                .isPresent()) {
            wrong.add(FieldViolation.of(
                    "baseSize",
                    Text.of("must be a text of 1 to {most} characters").with("most", LONGEST_LABEL),
                    Optional.of(shown(baseSize.get()))));
        }
        Optional<SizeTable> table = sizeTable.flatMap(TableReader::comparable);
        if (sizeTable.isPresent() && table.isEmpty()) {
            wrong.add(FieldViolation.of(
                    "sizeTable", TableReader.unknown(sizeTable.get()), Optional.of(shown(sizeTable.get()))));
        }
        if (!wrong.isEmpty()) {
            throw new ProblemException(Problem.of(
                    ProblemKind.BAD_REQUEST,
                    Text.of("A parameter is wrong: {parameter} {reason}.")
                            .with("parameter", wrong.get(0).field())
                            .with("reason", wrong.get(0).reason()),
                    wrong));
        }
        return new ForeignReading(
                Optional.empty(), unit, fileUnit, baseSize, table, Thresholds.usual(), rows, "baseSize");
    }

    private static Optional<Unit> unit(String parameter, Optional<String> symbol, List<FieldViolation> wrong) {
        Optional<Unit> unit = symbol.flatMap(Unit::find);
        if (symbol.isPresent() && unit.isEmpty()) {
            wrong.add(FieldViolation.of(parameter, "must be one of mm, cm, in", Optional.of(shown(symbol.get()))));
        }
        return unit;
    }

    static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints()
                .limit(LONGEST_LABEL)
                .forEach(c ->
                        shown.appendCodePoint(Character.isISOControl(c) || c >= 0xD800 && c <= 0xDFFF ? 0xFFFD : c));
        return shown.toString();
    }

    static GradeUnderCheck read(HttpServletRequest request, MediaType type, ForeignReading said) throws IOException {
        ForeignReading.Format format = type.equals(DXF) ? ForeignReading.Format.OUTLINES : ForeignReading.Format.TABLE;
        if (request.getContentLengthLong() > format.most()) {
            throw format.tooLarge("");
        }
        return said.checked(
                List.of(declared(format.file("", request.getInputStream()), request.getContentType())), format);
    }

    /** The file with the encoding that its media type declares, if it is one that is known here. */
    static ForeignFile declared(ForeignFile file, @Nullable String given) {
        try {
            Charset charset =
                    given == null ? null : MediaType.parseMediaType(given).getCharset();
            return charset == null ? file : file.declared(charset);
        } catch (IllegalArgumentException e) {
            throw new ProblemException(Problem.of(
                    ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                    "The charset that is declared is not known; UTF-8, UTF-16, windows-1252, ISO-8859-2 and Shift_JIS"
                            + " are among those that are."));
        }
    }

    /** A body of another type than these. */
    static ProblemException unsupported() {
        return new ProblemException(
                Problem.of(
                        ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                        "The body must be sent as application/json in UTF-8, text/csv, image/vnd.dxf, a workbook"
                                + " (.xlsx) or multipart/form-data."),
                Map.of("Accept-Post", "application/json, text/csv, " + XLSX + ", image/vnd.dxf, multipart/form-data"));
    }
}
