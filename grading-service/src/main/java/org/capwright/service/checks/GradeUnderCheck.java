package org.capwright.service.checks;

import java.util.List;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Finding;
import org.capwright.check.RunCoverage;
import org.capwright.check.Severity;
import org.capwright.check.Thresholds;
import org.capwright.check.WhatIf;
import org.capwright.gradeimport.ForeignGrade;
import org.capwright.gradeimport.ImportNote;
import org.capwright.quantity.Rounding;
import org.capwright.quantity.Unit;
import org.capwright.service.sizerun.SizeRunResult;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * A grade that was checked.
 *
 * @param title name of the style
 * @param unit unit of the answer
 * @param grade what was checked
 * @param findings what was found
 * @param traces how a file was understood; empty for a size run
 * @param read what was read of a file; none for a size run
 * @param thresholds limits of the label
 * @param run the run, where it was drafted here
 * @param language what the answer is written in
 */
record GradeUnderCheck(
        Text title,
        Unit unit,
        CheckedGrade grade,
        List<Finding> findings,
        List<ImportNote> traces,
        Optional<ForeignGrade> read,
        Thresholds thresholds,
        Optional<SizeRunResult> run,
        Language language) {

    GradeUnderCheck in(Language other) {
        return new GradeUnderCheck(title, unit, grade, findings, traces, read, thresholds, run, other);
    }

    /** The name of the style, in the language of the answer. */
    String name() {
        return title.in(language);
    }

    /** Where a sheet shows no grid of its own, whole millimetres are read easily. */
    private static final Rounding SHOWN = new Rounding(1);

    /** The smallest change of the rules that clears the gravest findings. Rules can only be changed where they are known, in a run that was drafted here. */
    Optional<WhatIf.Proposal> whatIf() {
        if (findings.stream().allMatch(finding -> finding.severity() == Severity.INFO)) {
            return Optional.empty();
        }
        return run.map(drafted -> WhatIf.smallest(
                drafted.run(), grade.body(), thresholds, drafted.order().shownRounding()));
    }

    /** The figures behind the findings, each with its cure: of the rules where they are known, else of the sizes as they were read. */
    List<WhatIf.Cure> cures(Optional<WhatIf.Proposal> whatIf) {
        return run.isPresent()
                ? whatIf.map(WhatIf.Proposal::cures).orElse(List.of())
                : WhatIf.mended(grade, thresholds, SHOWN).cures();
    }

    /** Who of the survey finds a size, where the bodies have one. */
    Optional<RunCoverage.Covered> coverage() {
        return RunCoverage.aboutBase(grade);
    }
}
