package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.capwright.check.CheckedSize;
import org.capwright.check.Expected;
import org.capwright.check.Finding;
import org.capwright.check.Severity;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.words.Text;

/** What of a file was not read, as findings: they stand before all others, for a grade that was read in part is judged in part. */
public final class Unread {

    /** The code of these findings. */
    public static final String CODE = "not-read";

    /** The code of a finding that asks the sender. */
    public static final String QUESTION = "open-question";

    private static final String ITSELF = "the file itself";

    private static final String RENAME =
            "Say what it is by the mapping, such as {\"Armloch\": \"armhole\"}, with ignore for what is no part of the"
                    + " sleeve; or name the row as the trade does, for example bicep, sleeve length, cap height, armhole,"
                    + " elbow or wrist.";

    private static final String REDRAW =
            "Draw the sleeve of each size once, as one closed line with a grain line along its centre, and name its"
                    + " size by its layer, its block, its file or a text in it.";

    /** What these findings speak of. */
    enum Part implements Subject {
        /** The file that the grade was read from. */
        FILE;

        @Override
        public String code() {
            return "file";
        }
    }

    private Unread() {}

    /**
     * Whether a finding says that something was not read or not understood.
     *
     * @param finding any finding
     * @return true for those made here
     */
    public static boolean is(Finding finding) {
        return finding.code().equals(CODE) || finding.code().equals(QUESTION);
    }

    /**
     * One finding for each row, column, line or outline with figures that was not read.
     *
     * @param grade a grade as it was read
     * @return in the order of the file; empty where everything was read
     */
    public static List<Finding> of(ForeignGrade grade) {
        List<Finding> findings = new ArrayList<>();
        for (OpenQuestion question : grade.questions()) {
            findings.add(new Finding(
                    QUESTION,
                    Severity.CAUTION,
                    question.sizes(),
                    question.subject(),
                    Quantity.OTHER,
                    OptionalDouble.empty(),
                    Expected.ANYTHING,
                    question.line() > 0
                            ? Text.of("line {line}: {question}")
                                    .with("line", question.line())
                                    .with("question", question.words())
                            : question.words(),
                    Text.of(ITSELF),
                    question.answers()));
        }
        List<String> sizes =
                grade.grade().sizes().stream().map(CheckedSize::label).toList();
        boolean drawn =
                grade.grade().sizes().stream().anyMatch(size -> !size.lines().isEmpty());
        for (ImportNote note : grade.traces()) {
            if (note.kind() == ImportNote.Kind.NOT_READ) {
                findings.add(new Finding(
                        CODE,
                        Severity.CAUTION,
                        drawn && sizes.contains(note.subject()) ? List.of(note.subject()) : List.of(),
                        Part.FILE,
                        Quantity.OTHER,
                        OptionalDouble.empty(),
                        Expected.ANYTHING,
                        Text.of(
                                        note.line() < 1
                                                ? "not read, so not judged: {what}"
                                                : drawn
                                                        ? "{file}, line {line} was not read, so it is not judged:"
                                                                + " {what}"
                                                        : "line {line} was not read, so it is not judged: {what}")
                                .with("file", note.file())
                                .with("line", note.line())
                                .with("what", note.words()),
                        Text.of(ITSELF),
                        Text.of(drawn ? REDRAW : RENAME)));
            }
        }
        return findings;
    }
}
