package org.capwright.service.checks;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Finding;
import org.capwright.check.Findings;
import org.capwright.check.Thresholds;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.gradeimport.ForeignGrade;
import org.capwright.gradeimport.ForeignOptions;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.gradeimport.SpecTableReader;
import org.capwright.gradeimport.UnknownBaseSizeException;
import org.capwright.gradeimport.Unread;
import org.capwright.json.problem.FieldViolation;
import org.capwright.quantity.Unit;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.tables.SizeTable;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * What is said of files of a style drawn elsewhere.
 *
 * @param name name of the style
 * @param unit unit of the answer; that of the files, or else mm, if none is said
 * @param fileUnit unit of the files
 * @param baseSize label of the base size
 * @param table bodies to hold the jumps against
 * @param thresholds limits of the label
 * @param mapping what rows of a spec table are, by their names
 * @param baseSizeField where the base size was said: a parameter, or a place of a form
 */
record ForeignReading(
        Optional<String> name,
        Optional<Unit> unit,
        Optional<Unit> fileUnit,
        Optional<String> baseSize,
        Optional<SizeTable> table,
        Thresholds thresholds,
        Map<String, String> mapping,
        String baseSizeField) {

    /** What kind of file. */
    enum Format {
        /** A spec table as CSV. */
        TABLE(Text.of("Spec table"), SpecTableReader.MOST_BYTES),
        /** Outlines as DXF. */
        OUTLINES(Text.of("Outlines"), OutlineReader.MOST_BYTES);

        private final Text usualName;
        private final int most;

        Format(Text usualName, int most) {
            this.usualName = usualName;
            this.most = most;
        }

        /** The most bytes of a file. */
        int most() {
            return most;
        }

        /** Takes a file from a stream. */
        ForeignFile file(String name, InputStream content) throws IOException {
            try {
                return ForeignFile.read(name, content, most);
            } catch (ForeignInputException e) {
                throw tooLarge(name);
            }
        }

        ProblemException tooLarge(String name) {
            return new ProblemException(Problem.of(
                    ProblemKind.BODY_TOO_LARGE,
                    Text.of("{file} is larger than {most} million bytes, the most that is read of such a file.")
                            .with("file", name.isEmpty() ? Text.of("The body") : Text.name(name))
                            .with("most", most / 1_000_000)));
        }
    }

    /** Reads and checks; a spec table is one file. */
    GradeUnderCheck checked(List<ForeignFile> files, Format format) {
        ForeignOptions options = new ForeignOptions(fileUnit, baseSize, mapping);
        ForeignGrade read;
        try {
            read = format == Format.TABLE
                    ? SpecTableReader.read(files.get(0), options)
                    : OutlineReader.read(files, options);
        } catch (UnknownBaseSizeException e) {
            throw otherBaseSize(e);
        } catch (ForeignInputException e) {
            throw malformed(e);
        }
        CheckedGrade grade = read.grade().against(table);
        List<Finding> findings = new ArrayList<>(Unread.of(read));
        findings.addAll(Findings.of(grade, thresholds));
        Unit shown = unit.or(() -> fileUnit).orElse(Unit.MILLIMETRE);
        return new GradeUnderCheck(
                name.map(Text::name).orElse(format.usualName),
                shown,
                grade,
                List.copyOf(findings),
                read.traces(),
                Optional.of(read),
                thresholds,
                Optional.empty(),
                Language.ENGLISH);
    }

    private ProblemException otherBaseSize(UnknownBaseSizeException e) {
        Text reason = Text.of("must be one of the sizes of the file, {sizes}").with("sizes", Text.names(e.sizes()));
        return baseSizeField.startsWith("/")
                ? new ProblemException(Problem.of(
                        ProblemKind.INVALID_REQUEST,
                        Text.of("1 field is wrong; it is named with what would work."),
                        List.of(FieldViolation.of(baseSizeField, reason, Optional.of(e.given())))))
                : WrongParameter.of(baseSizeField, reason, e.given());
    }

    /** The reason names the line and, among several files, the file. */
    private static ProblemException malformed(ForeignInputException e) {
        Text reason = e.reason();
        Problem problem = Problem.of(
                ProblemKind.MALFORMED_BODY,
                e.file().isEmpty()
                        ? reason.sentence()
                        : Text.of(reason.toString().endsWith(".") ? "{file}: {reason}" : "{file}: {reason}.")
                                .with("file", e.file())
                                .with("reason", reason));
        return new ProblemException(e.line() > 0 ? problem.at(e.line(), 1) : problem);
    }
}
