package org.capwright.service.checks;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.capwright.check.Thresholds;
import org.capwright.gradeimport.ForeignFile;
import org.capwright.gradeimport.ForeignInputException;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.measure.Unit;
import org.capwright.service.http.MultipartBody;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.problem.FoundViolations;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.schema.FieldType;
import org.capwright.service.http.schema.RequestObject;
import org.capwright.service.http.schema.SizeLabels;
import org.capwright.service.tables.TableReader;
import org.capwright.tables.SizeTable;
import org.springframework.http.MediaType;
import tools.jackson.databind.JsonNode;

/** Reads a form with files of a style drawn elsewhere, and what is said of them. */
final class Uploads {

    /** All files together, what is said of them, and the lines between. */
    static final int MOST_BYTES = OutlineReader.MOST_BYTES + 2 * RequestBodies.MOST_BYTES;

    static final String FILE = "file";
    static final String REQUEST = "request";

    /** The first group of a drawing: a code and, on the next line, a section or a remark. */
    private static final Pattern DRAWING = Pattern.compile("^\\uFEFF?\\s*(0\\s*\\R\\s*SECTION\\b|999\\s*\\R)");

    private static final int SNIFFED = 400;

    private final List<MultipartBody.Part> files = new ArrayList<>();
    private final List<MultipartBody.Part> said = new ArrayList<>();

    private Uploads(List<MultipartBody.Part> parts) {
        for (MultipartBody.Part part : parts) {
            if (part.name().equals(FILE)) {
                files.add(part);
            } else if (part.name().equals(REQUEST)) {
                said.add(part);
            } else {
                throw refused("The form has a part of another name; there are file, once or more, and request.");
            }
        }
    }

    /**
     * Reads and checks.
     *
     * @param request a form
     * @param bodies reads JSON
     * @return what was found
     * @throws IOException if the caller goes away
     * @throws ProblemException if the form or a file cannot be read, or something said is wrong
     */
    static GradeUnderCheck read(HttpServletRequest request, RequestBodies bodies) throws IOException {
        Uploads uploads = new Uploads(MultipartBody.read(request, MOST_BYTES));
        ForeignReading reading = uploads.reading(bodies);
        ForeignReading.Format format = uploads.format();
        return reading.checked(uploads.files(format), format);
    }

    private static ProblemException refused(String why) {
        return new ProblemException(Problem.of(ProblemKind.MALFORMED_BODY, why));
    }

    private ForeignReading reading(RequestBodies bodies) {
        if (said.isEmpty()) {
            return new ForeignReading(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Thresholds.usual());
        }
        if (said.size() > 1) {
            throw refused("The form has the part request more than once.");
        }
        MultipartBody.Content content = said.get(0).content();
        if (content.length() > RequestBodies.MOST_BYTES) {
            throw new ProblemException(Problem.of(
                    ProblemKind.BODY_TOO_LARGE,
                    "The part request is larger than " + RequestBodies.MOST_BYTES / 1024
                            + " kB, the most that is read of it."));
        }
        JsonNode tree;
        try {
            tree = bodies.parse(content.start(content.length()));
        } catch (ProblemException e) {
            Problem problem = e.problem();
            Problem ofPart = Problem.of(
                    ProblemKind.MALFORMED_BODY, problem.detail().replace("The body is", "The part request is"));
            throw new ProblemException(
                    problem.line().isPresent()
                            ? ofPart.at(problem.line().get(), problem.column().orElse(1))
                            : ofPart);
        }
        return reading(tree);
    }

    private static ForeignReading reading(JsonNode tree) {
        Unit shown =
                unit(tree.path("units")).or(() -> unit(tree.path("fileUnits"))).orElse(Unit.MILLIMETRE);
        FoundViolations found = new FoundViolations(shown);
        RequestObject object = new RequestObject(tree, CheckShape.UPLOAD, "/" + REQUEST, shown, found);
        object.choice("units");
        object.choice("fileUnits");
        FieldType.Label label =
                (FieldType.Label) CheckShape.UPLOAD.field("baseSize").kind();
        Optional<String> baseSize = object.raw("baseSize")
                .flatMap(value -> SizeLabels.one(value, object.at("baseSize"), label.longest(), found));
        Optional<SizeTable> table = TableReader.field(object, found);
        ForeignReading reading = new ForeignReading(
                object.text("name"),
                unit(tree.path("units")),
                unit(tree.path("fileUnits")),
                baseSize,
                table,
                CheckReader.thresholds(object));
        found.refuse();
        return reading;
    }

    private static Optional<Unit> unit(JsonNode node) {
        String symbol = node.asStringOpt().orElse("");
        return Stream.of(Unit.values())
                .filter(unit -> unit.symbol().equals(symbol))
                .findFirst();
    }

    private ForeignReading.Format format() {
        if (files.isEmpty()) {
            throw refused("The form has no part file; send a spec table as CSV, or outlines as DXF.");
        }
        List<ForeignReading.Format> formats =
                files.stream().map(Uploads::format).distinct().toList();
        if (formats.size() > 1) {
            throw refused("The form has spec tables and outlines; send the one or the other.");
        }
        if (formats.get(0) == ForeignReading.Format.TABLE && files.size() > 1) {
            throw refused("The form has more than one spec table; a spec table has all sizes of a style in one file.");
        }
        return formats.get(0);
    }

    /** By the media type where it says so, else by how the file starts. Browsers know neither type well. */
    private static ForeignReading.Format format(MultipartBody.Part part) {
        Optional<MediaType> type = part.type();
        if (type.filter(ForeignBodies.DXF::equalsTypeAndSubtype).isPresent()) {
            return ForeignReading.Format.OUTLINES;
        }
        if (type.filter(ForeignBodies.CSV::equalsTypeAndSubtype).isPresent()) {
            return ForeignReading.Format.TABLE;
        }
        String start = new String(part.content().start(SNIFFED), StandardCharsets.UTF_8);
        return DRAWING.matcher(start).find() ? ForeignReading.Format.OUTLINES : ForeignReading.Format.TABLE;
    }

    private List<ForeignFile> files(ForeignReading.Format format) throws IOException {
        List<ForeignFile> read = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            MultipartBody.Part part = files.get(i);
            String label = part.label().isEmpty() ? "file " + (i + 1) : part.label();
            try (InputStream content = part.content().stream()) {
                read.add(
                        format == ForeignReading.Format.TABLE
                                ? ForeignFile.table(label, content)
                                : ForeignFile.drawing(label, content));
            } catch (ForeignInputException e) {
                throw ForeignReading.malformed(e);
            }
        }
        return read;
    }
}
