package org.capwright.service.checks;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.capwright.check.Thresholds;
import org.capwright.exchange.ForeignFile;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.schema.FieldType;
import org.capwright.json.schema.RequestObject;
import org.capwright.json.schema.SizeLabels;
import org.capwright.json.tables.TableReader;
import org.capwright.quantity.Unit;
import org.capwright.service.http.RequestBodies;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.tables.SizeTable;
import org.capwright.words.Text;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.util.StringUtils;
import org.springframework.web.multipart.MultipartException;
import org.springframework.web.multipart.MultipartHttpServletRequest;
import tools.jackson.databind.JsonNode;

/** Reads a form with files of a style drawn elsewhere, and what is said of them. */
final class Uploads {

    /** All files together, what is said of them, and the lines between. */
    static final int MOST_BYTES = OutlineReader.MOST_BYTES + 2 * RequestBodies.MOST_BYTES;

    static final String FILE = "file";
    static final String REQUEST = "request";

    private static final String BASE_SIZE = "/" + REQUEST + "/baseSize";

    /** The first group of a drawing: a code and, on the next line, a section or a remark. */
    private static final Pattern DRAWING = Pattern.compile("^\\uFEFF?\\s*(0\\s*\\R\\s*SECTION\\b|999\\s*\\R)");

    private static final int SNIFFED = 400;
    private static final int LONGEST_LABEL = 60;

    private final List<Part> files = new ArrayList<>();
    private final List<Part> said = new ArrayList<>();

    private Uploads(Collection<Part> parts) {
        for (Part part : parts) {
            if (part.getName().equals(FILE)) {
                files.add(part);
            } else if (part.getName().equals(REQUEST)) {
                said.add(part);
            } else {
                throw refused(
                        "The form has a part with an unknown name; its parts are file, once or more, and request.");
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
    static GradeUnderCheck read(MultipartHttpServletRequest request, RequestBodies bodies) throws IOException {
        request.getMultiFileMap(); // has Spring read the form, or refuse it
        Uploads uploads;
        try {
            uploads = new Uploads(request.getParts());
        } catch (ServletException e) {
            throw new MultipartException("read once before", e);
        }
        ForeignReading reading = uploads.reading(bodies);
        ForeignReading.Format format = uploads.format();
        return reading.checked(uploads.files(format), format);
    }

    private static ProblemException refused(String why) {
        return new ProblemException(Problem.of(ProblemKind.MALFORMED_BODY, why));
    }

    private ForeignReading reading(RequestBodies bodies) throws IOException {
        if (said.isEmpty()) {
            return new ForeignReading(
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Thresholds.usual(),
                    Map.of(),
                    BASE_SIZE);
        }
        if (said.size() > 1) {
            throw refused("The form has the part request more than once.");
        }
        Part part = said.get(0);
        if (part.getSize() > RequestBodies.MOST_BYTES) {
            throw new ProblemException(Problem.of(
                    ProblemKind.BODY_TOO_LARGE,
                    Text.of("The part request is larger than {most} kB, the most that is read of it.")
                            .with("most", RequestBodies.MOST_BYTES / 1024)));
        }
        JsonNode tree;
        try (InputStream content = part.getInputStream()) {
            tree = bodies.parse(content.readAllBytes());
        } catch (ProblemException e) {
            Problem problem = e.problem();
            Problem ofPart = Problem.of(
                    ProblemKind.MALFORMED_BODY,
                    problem.detail().toString().replace("The body is", "The part request is"));
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
        RequestObject object = new RequestObject(tree, CheckSchema.UPLOAD, "/" + REQUEST, shown, found);
        object.choice("units");
        object.choice("fileUnits");
        FieldType.Label label =
                (FieldType.Label) CheckSchema.UPLOAD.field("baseSize").kind();
        Optional<String> baseSize = object.raw("baseSize")
                .flatMap(value -> SizeLabels.one(value, object.at("baseSize"), label.longest(), found));
        Optional<SizeTable> table = TableReader.field(object, found);
        ForeignReading reading = new ForeignReading(
                object.text("name"),
                unit(tree.path("units")),
                unit(tree.path("fileUnits")),
                baseSize,
                table,
                CheckReader.thresholds(object),
                RowMapping.of(object),
                BASE_SIZE);
        found.refuse();
        return reading;
    }

    private static Optional<Unit> unit(JsonNode node) {
        return node.asStringOpt().flatMap(Unit::find);
    }

    private ForeignReading.Format format() throws IOException {
        if (files.isEmpty()) {
            throw refused("The form has no part file; send a spec table as CSV or .xlsx, or outlines as DXF.");
        }
        ForeignReading.Format format = format(files.get(0));
        for (Part file : files) {
            if (format(file) != format) {
                throw refused("The form has spec tables and outlines; send one or the other.");
            }
        }
        if (format == ForeignReading.Format.TABLE && files.size() > 1) {
            throw refused("The form has more than one spec table; a spec table has all sizes of a style in one file.");
        }
        return format;
    }

    /** By the media type where it says so, else by how the file starts. Browsers know neither type well. */
    private static ForeignReading.Format format(Part part) throws IOException {
        Optional<MediaType> type = ForeignBodies.type(part.getContentType());
        if (type.isPresent()) {
            return type.get().equals(ForeignBodies.DXF) ? ForeignReading.Format.OUTLINES : ForeignReading.Format.TABLE;
        }
        try (InputStream content = part.getInputStream()) {
            String start = new String(content.readNBytes(SNIFFED), StandardCharsets.UTF_8);
            return DRAWING.matcher(start).find() ? ForeignReading.Format.OUTLINES : ForeignReading.Format.TABLE;
        }
    }

    private List<ForeignFile> files(ForeignReading.Format format) throws IOException {
        List<ForeignFile> read = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            Part part = files.get(i);
            String label = label(part.getSubmittedFileName());
            String name = label.isEmpty() ? "file " + (i + 1) : label;
            try (InputStream content = part.getInputStream()) {
                read.add(ForeignBodies.declared(format.file(name, content), part.getContentType()));
            }
        }
        return read;
    }

    /** What the sender calls a file, without folders and control characters; to be shown, never to be opened. */
    private static String label(@Nullable String file) {
        String base = StringUtils.getFilename(StringUtils.cleanPath(file == null ? "" : file));
        StringBuilder label = new StringBuilder();
        (base == null ? "" : base)
                .codePoints()
                .limit(LONGEST_LABEL)
                .filter(c -> !Character.isISOControl(c)
                        && Character.getType(c) != Character.FORMAT
                        && Character.getType(c) != Character.SURROGATE)
                .forEach(label::appendCodePoint);
        return label.toString().strip();
    }
}
