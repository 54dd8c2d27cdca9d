package org.capwright.service.sizerun;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.capwright.draft.SleeveDraft;
import org.capwright.grade.GradedSize;
import org.capwright.grade.SizeRun;
import org.capwright.measure.Dimension;
import org.capwright.tables.BodyDimension;
import org.capwright.tables.GarmentDimension;
import org.capwright.tables.SizeTable;
import org.capwright.tables.TableKind;
import org.capwright.tables.TableValue;

/** Compares the jumps of a run with the growth in a size table, where both have the sizes. */
final class JumpFindings {

    /** A garment that grows this many times as fast as the body balloons in the large sizes. Common practice, no source. */
    private static final double BALLOONS = 2;

    /** Differences that no tape shows, mm. */
    private static final double NOTHING = 0.05;

    /** A row of the table that a dimension of the sleeve goes with; a flat width counts double. */
    private record Counterpart(org.capwright.tables.Dimension row, double factor) {}

    private static final List<Counterpart> BICEP = List.of(
            new Counterpart(BodyDimension.UPPER_ARM_GIRTH, 1),
            new Counterpart(GarmentDimension.SLEEVE_WIDTH_TOP_HALF, 2),
            new Counterpart(GarmentDimension.SLEEVE_WIDTH_HALF, 2));
    private static final List<Counterpart> LENGTH = List.of(
            new Counterpart(BodyDimension.ARM_LENGTH, 1),
            new Counterpart(GarmentDimension.SLEEVE_LENGTH, 1),
            new Counterpart(GarmentDimension.LONG_SLEEVE_LENGTH, 1));

    private final SizeRun run;
    private final SizeTable table;
    private final Shown shown;
    private final List<Finding> findings = new ArrayList<>();

    private JumpFindings(SizeRun run, SizeTable table, Shown shown) {
        this.run = run;
        this.table = table;
        this.shown = shown;
    }

    static List<Finding> of(SizeRun run, SizeTable table, Shown shown) {
        JumpFindings jumps = new JumpFindings(run, table, shown);
        Optional<BodyDimension> key = table.info().key();
        if (key.isEmpty()) {
            jumps.note(
                    "sizeTable",
                    "The classes of the table " + table.id()
                            + " are not ordered by a body dimension, so there is no growth to compare with.");
            return jumps.findings;
        }
        jumps.compare("bicep", BICEP, draft -> OptionalDouble.of(draft.base().bicep()));
        if (!run.baseSize().draft().dimensions().has(Dimension.LENGTH)) {
            return jumps.findings;
        }
        if (table.info().kind() == TableKind.BODY && key.get() != BodyDimension.STATURE) {
            jumps.note(
                    "length",
                    "The sizes of the table " + table.id() + " are ordered by "
                            + key.get().id()
                            + ", but arms grow in length with stature; length was not compared. Take a table by stature.");
        } else {
            jumps.compare("length", LENGTH, draft -> draft.dimensions().find(Dimension.LENGTH));
        }
        return jumps.findings;
    }

    private void compare(
            String dimension, List<Counterpart> counterparts, Function<SleeveDraft, OptionalDouble> measure) {
        Optional<Counterpart> counterpart = counterparts.stream()
                .filter(c -> table.row(c.row()).isPresent())
                .findFirst();
        if (counterpart.isEmpty()) {
            note(
                    dimension,
                    "The table " + table.id() + " has no row that goes with " + dimension + "; nothing was compared.");
            return;
        }
        int compared = 0;
        for (int i = 1; i < run.sizes().size(); i++) {
            GradedSize from = run.sizes().get(i - 1);
            GradedSize to = run.sizes().get(i);
            Optional<TableValue> low =
                    table.value(from.label(), counterpart.get().row());
            Optional<TableValue> high =
                    table.value(to.label(), counterpart.get().row());
            if (low.isPresent() && high.isPresent()) {
                compared++;
                double growth = (high.get().millimetres() - low.get().millimetres())
                        * counterpart.get().factor();
                double jump = measure.apply(to.draft()).orElse(0)
                        - measure.apply(from.draft()).orElse(0);
                judge(dimension, from.label(), to.label(), jump, growth, counterpart.get());
            }
        }
        if (compared == 0) {
            note(
                    dimension,
                    "No two neighbouring sizes of the run are in the table " + table.id()
                            + " with a value; nothing was compared. Its sizes are " + String.join(", ", table.sizes())
                            + (table.labels().isEmpty()
                                    ? ""
                                    : ", also called "
                                            + String.join(", ", table.labels().keySet()))
                            + ".");
        }
    }

    /** What the table measures. */
    private String measured() {
        return table.info().kind() == TableKind.BODY ? "the body" : "the garment of the standard";
    }

    private void judge(String dimension, String from, String to, double jump, double growth, Counterpart counterpart) {
        String between = " from size " + from + " to " + to;
        String grown = measured() + " does (" + counterpart.row().id() + ")" + between;
        if (jump < growth - NOTHING) {
            add(
                    "warning",
                    dimension,
                    from,
                    to,
                    jump,
                    growth,
                    "The sleeve grows less than " + grown + ", so its ease shrinks; take a greater increment.");
        } else if (growth > NOTHING && jump > BALLOONS * growth) {
            add(
                    "info",
                    dimension,
                    from,
                    to,
                    jump,
                    growth,
                    "The sleeve grows more than twice as much as " + grown
                            + ", so its ease balloons; take a smaller increment unless that is meant.");
        }
    }

    private void add(
            String severity, String dimension, String from, String to, double jump, double growth, String message) {
        findings.add(new Finding(
                severity,
                List.of(from, to),
                dimension,
                Optional.of(shown.length(jump)),
                Optional.of(shown.length(growth)),
                Optional.of(shown.unit().symbol()),
                table.info().source(),
                message));
    }

    private void note(String dimension, String message) {
        findings.add(new Finding(
                "info",
                List.of(),
                dimension,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                table.info().source(),
                message));
    }
}
