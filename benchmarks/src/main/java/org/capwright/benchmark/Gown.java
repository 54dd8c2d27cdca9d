package org.capwright.benchmark;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.capwright.GradeRules;
import org.capwright.StructuredSleeve;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.HemShape;
import org.capwright.draft.OverlayStyle;
import org.capwright.draft.SleeveStyle;
import org.capwright.draft.UnderSleeveStyle;
import org.capwright.draft.pleat.PleatDirection;
import org.capwright.draft.pleat.PleatKind;
import org.capwright.draft.pleat.PleatPlan;
import org.capwright.draft.pleat.PleatSizing;
import org.capwright.grade.GradeRule;
import org.capwright.grade.SizeRun;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.Unit;

/** The run that is measured: a choir gown's sleeve with overlay and pleats, ten sizes. */
final class Gown {

    static final List<String> SIZES = List.of("34", "36", "38", "40", "42", "44", "46", "48", "50", "52");
    static final int BASE = 3;
    static final double BICEP_STEP = 13;
    static final double CAP_STEP = 4;
    static final double ARMHOLE_STEP = 15;

    static final SleeveStyle STYLE = new SleeveStyle(
            new CapFit.Given(),
            Optional.of(new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION)
                    .pleated(new PleatPlan(
                            PleatKind.KNIFE, PleatDirection.TOWARD_APEX, new PleatSizing.ByCount(8), 0, 0))),
            Optional.empty());

    static final Dimensions DIMENSIONS = dimensions();

    static final List<GradeRule> RULES = List.of(
            GradeRule.uniform(Dimension.BICEP, BICEP_STEP, SIZES.size()),
            GradeRule.uniform(Dimension.CAP_HEIGHT, CAP_STEP, SIZES.size()),
            GradeRule.uniform(Dimension.ARMHOLE, ARMHOLE_STEP, SIZES.size()));

    private Gown() {}

    private static Dimensions dimensions() {
        Map<Dimension, Double> values = new EnumMap<>(Dimension.class);
        values.put(Dimension.BICEP, 360.0);
        values.put(Dimension.CAP_HEIGHT, 135.0);
        values.put(Dimension.CAP_OUTWARD, 19.0);
        values.put(Dimension.CAP_INWARD, 12.0);
        values.put(Dimension.ARMHOLE, 450.0);
        values.put(Dimension.RISE, 140.0);
        values.put(Dimension.OVERLAY_LENGTH, 340.0);
        values.put(Dimension.FRONT_GAP, 60.0);
        values.put(Dimension.BACK_GAP, 60.0);
        return Dimensions.of(values);
    }

    /** The same with its long under-sleeve: every piece there is. */
    static SizeRun whole() {
        return SizeRun.grade(wholeStyle(), wholeDimensions(), SIZES, BASE, RULES);
    }

    private static SleeveStyle wholeStyle() {
        return new SleeveStyle(STYLE.fit(), STYLE.overlay(), Optional.of(new UnderSleeveStyle(ElbowShaping.TAPERED)));
    }

    private static Dimensions wholeDimensions() {
        return DIMENSIONS.with(Dimension.LENGTH, 600).with(Dimension.ELBOW, 300).with(Dimension.WRIST, 220);
    }

    /** The whole gown in any number of sizes, each a little larger than the one before, drafted by the front door. */
    static org.capwright.SizeRun drafted(int sizes) {
        List<String> labels =
                IntStream.range(0, sizes).mapToObj(i -> "S" + (i + 1)).toList();
        double step = 10.0 / Math.max(10, sizes);
        List<GradeRule> rules = List.of(
                GradeRule.uniform(Dimension.BICEP, step * BICEP_STEP, sizes),
                GradeRule.uniform(Dimension.CAP_HEIGHT, step * CAP_STEP, sizes),
                GradeRule.uniform(Dimension.ARMHOLE, step * ARMHOLE_STEP, sizes));
        return StructuredSleeve.of(
                        new PatternSet.Title("Choir gown sleeve", "1", Unit.CENTIMETRE),
                        wholeStyle(),
                        wholeDimensions())
                .grade(GradeRules.of(rules), new Sizes(labels, sizes * BASE / SIZES.size()));
    }

    static SizeRun run() {
        return SizeRun.grade(STYLE, DIMENSIONS, SIZES, BASE, RULES);
    }
}
