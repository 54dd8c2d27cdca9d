package org.capwright.check;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.capwright.measure.SleeveSubject;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Quantity;
import org.capwright.tables.SizeTable;
import org.capwright.words.Text;

/** What is worth a look in a run before it is cut: the checks of its grade, and what its pieces and its size table leave open. */
public final class Findings {

    private static final String SIZE_TABLE = "size-table";

    /** Codes beside those of {@link GradeChecks}; docs/checks has a page for each. */
    public static final List<String> CODES =
            Stream.concat(Stream.of(SIZE_TABLE), PieceFindings.CODES.stream()).toList();

    private Findings() {}

    /**
     * What is worth a look in a run that was drafted here.
     *
     * @param patterns the pieces of the run
     * @param grade the same run as it is checked
     * @param thresholds limits of the label
     * @return findings, check by check
     */
    public static List<Finding> of(PatternSet patterns, CheckedGrade grade, Thresholds thresholds) {
        List<Finding> findings = new ArrayList<>(of(grade, thresholds));
        findings.addAll(PieceFindings.of(patterns));
        return findings;
    }

    /**
     * What is worth a look in a grade that was drafted elsewhere.
     *
     * @param grade what is known of it
     * @param thresholds limits of the label
     * @return findings, check by check
     */
    public static List<Finding> of(CheckedGrade grade, Thresholds thresholds) {
        List<Finding> findings = new ArrayList<>(GradeChecks.run(grade, thresholds));
        grade.body()
                .filter(reference -> nothingToCompare(grade, reference))
                .ifPresent(reference -> findings.add(unknownSizes(reference.table())));
        return findings;
    }

    private static boolean nothingToCompare(CheckedGrade grade, BodyReference reference) {
        if (grade.sizes().size() == 1) {
            return reference.value(grade.label(0), reference.key()).isEmpty();
        }
        for (int i = 1; i < grade.sizes().size(); i++) {
            String from = grade.label(i - 1);
            String to = grade.label(i);
            if (reference.jump(from, to, reference.key()).isPresent()) {
                return false;
            }
        }
        return true;
    }

    private static Finding unknownSizes(SizeTable table) {
        List<String> labels = List.copyOf(table.labels().keySet());
        return new Finding(
                SIZE_TABLE,
                Severity.INFO,
                List.of(),
                SleeveSubject.Option.SIZE_TABLE,
                Quantity.OTHER,
                OptionalDouble.empty(),
                Expected.ANYTHING,
                Text.of("No two neighbouring sizes of the run are in the table {table}, so nothing was compared with"
                                + " it.")
                        .with("table", table.id()),
                Text.name(table.info().source()),
                Text.of(
                                labels.isEmpty()
                                        ? "Name the sizes as the table does: {sizes}."
                                        : "Name the sizes as the table does: {sizes}, also called {labels}.")
                        .with("sizes", Text.names(table.sizes()))
                        .with("labels", Text.names(labels)));
    }
}
