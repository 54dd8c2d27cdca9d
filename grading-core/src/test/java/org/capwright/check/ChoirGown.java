package org.capwright.check;

import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.tables.SizeTable;
import org.capwright.tables.SizeTables;

/** The one gown of these tests: a costume workshop's choir gown, sizes 36 to 46, with a pleated shoulder overlay. Invented figures. */
public final class ChoirGown {

    public static final List<String> LABELS = List.of("36", "38", "40", "42", "44", "46");

    private static final OverlayStyle OVERLAY = new OverlayStyle(HemShape.VEE, OverlayStyle.THIRD_DIVISION);

    public static final SleeveStyle STYLE = with(OVERLAY.pleated(
            new PleatPlan(PleatKind.KNIFE, PleatDirection.AWAY_FROM_APEX, new PleatSizing.ByCount(8), 0, 0)));

    /** The same before its pleats are laid out. */
    public static final SleeveStyle UNPLEATED = with(OVERLAY);

    public static final Dimensions BASE = Dimensions.of(Map.ofEntries(
            Map.entry(Dimension.BICEP, 360.0),
            Map.entry(Dimension.CAP_HEIGHT, 135.0),
            Map.entry(Dimension.CAP_OUTWARD, 19.0),
            Map.entry(Dimension.CAP_INWARD, 12.0),
            Map.entry(Dimension.ARMHOLE, 450.0),
            Map.entry(Dimension.LENGTH, 600.0),
            Map.entry(Dimension.RISE, 140.0),
            Map.entry(Dimension.OVERLAY_LENGTH, 340.0),
            Map.entry(Dimension.FRONT_GAP, 60.0),
            Map.entry(Dimension.BACK_GAP, 60.0),
            Map.entry(Dimension.ELBOW, 280.0),
            Map.entry(Dimension.WRIST, 190.0)));

    public static final List<GradeRule> RULES = List.of(
            GradeRule.uniform(Dimension.BICEP, 12, 6),
            GradeRule.uniform(Dimension.LENGTH, 5, 6),
            GradeRule.uniform(Dimension.CAP_HEIGHT, 4, 6),
            new GradeRule(Dimension.ARMHOLE, List.of(16.0, 16.0, 18.0, 18.0, 20.0)));

    private ChoirGown() {}

    private static SleeveStyle with(OverlayStyle overlay) {
        return new SleeveStyle(
                new CapFit.Given(), Optional.of(overlay), Optional.of(new UnderSleeveStyle(ElbowShaping.TAPERED)));
    }

    public static SizeRun run() {
        return run(RULES);
    }

    public static SizeRun run(List<GradeRule> rules) {
        return SizeRun.grade(STYLE, BASE, LABELS, 2, rules);
    }

    public static SizeTable women() {
        return SizeTables.find("women-en-13402-3-bust").orElseThrow();
    }

    public static CheckedGrade grade() {
        return CheckedGrade.of(run()).against(BodyReference.of(women()));
    }

    /** What stops a run when it is compared with the women's table. */
    public static List<String> stops(SizeRun run) {
        return GradeChecks.run(CheckedGrade.of(run).against(BodyReference.of(women())), Thresholds.usual()).stream()
                .filter(finding -> finding.severity() == Severity.STOP)
                .map(Finding::toString)
                .toList();
    }
}
