package org.capwright.grade;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.capwright.draft.Overlay;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveDraft;
import org.capwright.draft.UnderSleeve;
import org.capwright.draft.WristOpening;
import org.capwright.draft.pleat.TruedEdge;
import org.capwright.measure.Dimension;

/**
 * The spec table of a run: points of measure, each taken from the drafted lines of every size.
 *
 * @param sizes labels, smallest first
 * @param base position of the base size
 * @param rows points of measure
 */
public record SpecTable(List<String> sizes, int base, List<PointOfMeasure> rows) {

    private static final String GOST =
            "GOST 12.4.111-82, finished sleeve widths ±0.5 cm flat, so ±1 cm round; sleeve length ±1.0 cm";
    private static final String PRACTICE = "common practice, no source";

    /**
     * Checks that every row has a value per size.
     *
     * @param sizes labels, smallest first
     * @param base position of the base size
     * @param rows points of measure
     * @throws IllegalArgumentException if a row has too few or too many values, or there is no base size at that position
     */
    public SpecTable {
        sizes = List.copyOf(sizes);
        rows = List.copyOf(rows);
        if (base < 0 || base >= sizes.size()) {
            throw new IllegalArgumentException("base: " + base + " is not within 0 to " + (sizes.size() - 1));
        }
        for (PointOfMeasure row : rows) {
            if (row.values().size() != sizes.size()) {
                throw new IllegalArgumentException("rows: " + row.code() + " has "
                        + row.values().size() + " values for " + sizes.size() + " sizes");
            }
        }
    }

    /**
     * Measures a run.
     *
     * @param run a graded run
     * @return the table
     */
    public static SpecTable of(SizeRun run) {
        Rows rows = new Rows(run);
        rows.add(
                "bicep",
                "Bicep",
                Dimension.BICEP.definition(),
                10,
                GOST,
                d -> d.base()
                        .back()
                        .curve()
                        .end()
                        .distanceTo(d.base().front().curve().end().mirrored()));
        rows.add(
                "capHeight",
                "Cap height",
                Dimension.CAP_HEIGHT.definition(),
                5,
                PRACTICE,
                d -> d.base().back().curve().start().y()
                        - d.base().back().curve().end().y());
        rows.add(
                "capLine",
                "Cap line",
                "Along the seam line of the cap from the front underarm point over the apex to the back underarm"
                        + " point.",
                5,
                PRACTICE,
                d -> d.base().capLength());
        SleeveDraft base = run.baseSize().draft();
        if (base.capEase().isPresent()) {
            rows.add(
                    "armhole",
                    "Armhole",
                    Dimension.ARMHOLE.definition() + " Given, not drafted here.",
                    5,
                    PRACTICE,
                    d -> d.dimensions().get(Dimension.ARMHOLE));
            rows.add(
                    "capEase",
                    "Cap ease",
                    "Cap line less armhole.",
                    5,
                    PRACTICE,
                    d -> d.capEase().orElseThrow());
        }
        if (base.underSleeve().isPresent()) {
            addUnderSleeve(rows);
        }
        if (base.overlay().isPresent()) {
            addOverlay(rows);
        }
        return new SpecTable(run.sizes().stream().map(GradedSize::label).toList(), run.base(), List.copyOf(rows.list));
    }

    private static void addUnderSleeve(Rows rows) {
        rows.add(
                "length",
                "Sleeve length",
                Dimension.LENGTH.definition(),
                10,
                GOST,
                d -> under(d).centreLine().length());
        rows.add("elbow", "Elbow", Dimension.ELBOW.definition(), 10, GOST, d -> under(d).elbow());
        rows.add("wrist", "Wrist", Dimension.WRIST.definition(), 10, GOST, d -> under(d).wrist());
        rows.add(
                "underarmSeam",
                "Underarm seam",
                "Along the seam line from the front underarm point to the finished lower edge.",
                10,
                GOST,
                d -> under(d).frontSeam());
        UnderSleeve base = under(rows.run.baseSize().draft());
        if (base.dart().isPresent()) {
            rows.add(
                    "elbowDart",
                    "Elbow dart width",
                    Dimension.ELBOW_DART.definition(),
                    1,
                    PRACTICE,
                    d -> under(d).dart().orElseThrow().width());
            rows.add(
                    "elbowDartLength",
                    "Elbow dart length",
                    Dimension.ELBOW_DART_LENGTH.definition(),
                    3,
                    PRACTICE,
                    d -> under(d).dart().orElseThrow().length());
        }
        if (base.easing().isPresent()) {
            rows.add(
                    "elbowEase",
                    "Back underarm seam ease",
                    Dimension.ELBOW_EASE.definition(),
                    3,
                    PRACTICE,
                    d -> under(d).backSeam() - under(d).frontSeam());
        }
        if (rows.run.sizes().stream().anyMatch(size -> markedOpening(size.draft()) > 0)) {
            rows.add(
                    "wristOpening",
                    "Wrist opening",
                    "Along the underarm seam from the finished lower edge up; 0 where the hand passes without an"
                            + " opening.",
                    3,
                    PRACTICE,
                    SpecTable::markedOpening);
        }
    }

    private static UnderSleeve under(SleeveDraft draft) {
        return draft.underSleeve().orElseThrow();
    }

    private static double markedOpening(SleeveDraft draft) {
        return under(draft)
                .opening()
                .filter(opening -> opening.basis() == WristOpening.Basis.GIVEN)
                .map(WristOpening::length)
                .orElse(0.0);
    }

    private static void addOverlay(Rows rows) {
        rows.add(
                "overlayTotalLength",
                "Overlay total length",
                "From the raised apex of the overlay down the fold to the finished hem.",
                10,
                PRACTICE,
                d -> overlay(d).back().apex().distanceTo(overlay(d).back().hemPoint()));
        rows.add(
                "overlayRise",
                "Overlay rise",
                Dimension.RISE.definition(),
                5,
                PRACTICE,
                d -> overlay(d).back().apex().distanceTo(d.base().back().curve().start()));
        rows.add(
                "overlayWidth",
                "Overlay width",
                "Across the overlay on the bicep line, underarm point to underarm point.",
                10,
                PRACTICE,
                d -> overlay(d)
                        .back()
                        .underarm()
                        .distanceTo(overlay(d).front().underarm().mirrored()));
        rows.add(
                "overlayHem",
                "Overlay hem",
                "Along the finished hem from its front end over the hem point to its back end.",
                10,
                PRACTICE,
                d -> overlay(d).front().hem().length() + overlay(d).back().hem().length());
        rows.add(
                "overlayEdge",
                "Overlay top edge, flat",
                "Along the top edge as drafted, before it is trued under its pleats: attach span and pleat take-up"
                        + " together.",
                5,
                PRACTICE,
                d -> overlay(d).edgeLength());
        rows.add(
                "attachSpan",
                "Attach span",
                "Along the armhole between the two ends of the overlay: the finished length of its pleated top edge.",
                5,
                PRACTICE,
                d -> overlay(d).attachSpan());
        if (rows.run.style().overlay().flatMap(OverlayStyle::pleats).isPresent()) {
            rows.add(
                    "pleatTakeUp",
                    "Pleat take-up",
                    "Flat top edge less attach span: what all pleats together fold away.",
                    5,
                    PRACTICE,
                    d -> overlay(d).takeUp());
            rows.add(
                    "pleatDepth",
                    "Pleat depth",
                    "As folded, square to the fold line: from it to where the fold beneath it meets the seam; the"
                            + " deepest pleat.",
                    1,
                    PRACTICE,
                    d -> overlay(d).trued().map(TruedEdge::greatestDepth).orElse(0.0));
            rows.add(
                    "overlayNetEdge",
                    "Overlay top edge, trued",
                    "Along the net line drawn on the piece, over the corners that it has under the pleats: longer or"
                            + " shorter than the top edge flat.",
                    5,
                    PRACTICE,
                    d -> overlay(d)
                            .trued()
                            .map(TruedEdge::length)
                            .orElse(overlay(d).edgeLength()));
        }
    }

    private static Overlay overlay(SleeveDraft draft) {
        return draft.overlay().orElseThrow();
    }

    /** Collects rows, each measured in every size. */
    private static final class Rows {
        private final SizeRun run;
        private final List<PointOfMeasure> list = new ArrayList<>();

        Rows(SizeRun run) {
            this.run = run;
        }

        void add(
                String code,
                String name,
                String definition,
                double tolerance,
                String source,
                ToDoubleFunction<SleeveDraft> measure) {
            List<Double> values = new ArrayList<>(run.sizes().size());
            for (GradedSize size : run.sizes()) {
                values.add(measure.applyAsDouble(size.draft()));
            }
            list.add(new PointOfMeasure(code, name, definition, List.copyOf(values), tolerance, source));
        }
    }
}
