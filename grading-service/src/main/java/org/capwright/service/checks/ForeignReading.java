package org.capwright.service.checks;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Thresholds;
import org.capwright.gradeimport.ForeignFile;
import org.capwright.gradeimport.ForeignGrade;
import org.capwright.gradeimport.ForeignInputException;
import org.capwright.gradeimport.ForeignOptions;
import org.capwright.gradeimport.OutlineReader;
import org.capwright.gradeimport.SpecTableReader;
import org.capwright.measure.Unit;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.sizerun.Findings;
import org.capwright.tables.SizeTable;

/**
 * What is said of files of a style drawn elsewhere.
 *
 * @param name name of the style
 * @param unit unit of the answer; that of the files, or else mm, if none is said
 * @param fileUnit unit of the files
 * @param baseSize label of the base size
 * @param table bodies to hold the jumps against
 * @param thresholds limits of the label
 */
record ForeignReading(
        Optional<String> name,
        Optional<Unit> unit,
        Optional<Unit> fileUnit,
        Optional<String> baseSize,
        Optional<SizeTable> table,
        Thresholds thresholds) {

    /** What kind of file. */
    enum Format {
        /** A spec table as CSV. */
        TABLE("Spec table"),
        /** Outlines as DXF. */
        OUTLINES("Outlines");

        private final String usualName;

        Format(String usualName) {
            this.usualName = usualName;
        }
    }

    /** Reads and checks; a spec table is one file. */
    GradeUnderCheck checked(List<ForeignFile> files, Format format) {
        ForeignOptions options = new ForeignOptions(fileUnit, baseSize);
        ForeignGrade read;
        try {
            read = format == Format.TABLE
                    ? SpecTableReader.read(files.get(0), options)
                    : OutlineReader.read(files, options);
        } catch (ForeignInputException e) {
            throw malformed(e);
        }
        CheckedGrade grade = new CheckedGrade(read.grade().sizes(), read.grade().base(), table.map(Findings::bodies));
        Unit shown = unit.or(() -> fileUnit).orElse(Unit.MILLIMETRE);
        return new GradeUnderCheck(
                name.orElse(format.usualName),
                shown,
                grade,
                Findings.found(grade, thresholds),
                read.traces(),
                thresholds,
                Optional.empty());
    }

    /** The reason names the line and, among several files, the file. */
    static ProblemException malformed(ForeignInputException e) {
        String reason = e.reason().isEmpty() ? "the file cannot be read" : e.reason();
        String sentence = e.file().isEmpty()
                ? reason.substring(0, 1).toUpperCase(Locale.ROOT) + reason.substring(1)
                : e.file() + ": " + reason;
        Problem problem = Problem.of(ProblemKind.MALFORMED_BODY, sentence + (sentence.endsWith(".") ? "" : "."));
        return new ProblemException(e.line() > 0 ? problem.at(e.line(), 1) : problem);
    }
}
