package org.capwright.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.capwright.words.Text;

/**
 * What is behind some of the findings: one figure, whose change takes them all away. A report opens with it; its consequences hang under it.
 *
 * @param cure the figure, what it should be and what passes as well; none for the findings that no single figure explains
 * @param findings what goes with it, in the order of the report, and what the survey and the table note on the same jumps
 */
public record Cause(Optional<WhatIf.Cure> cure, List<Finding> findings) {

    /**
     * Copies the list.
     *
     * @param cure the figure, what it should be and what passes as well; none for the findings that no single figure explains
     * @param findings what goes with it
     */
    public Cause {
        findings = List.copyOf(findings);
    }

    /**
     * Findings by what is behind them.
     *
     * @param cures the fewest figures whose change takes findings away, the most telling first
     * @param findings all findings of a report
     * @return the causes, the most telling first, and last the findings that none of them explains, if there are any; every finding once
     */
    public static List<Cause> of(List<WhatIf.Cure> cures, List<Finding> findings) {
        List<Finding> left = new ArrayList<>(findings);
        List<Cause> causes = new ArrayList<>();
        for (WhatIf.Cure cure : cures) {
            Set<String> cured = cure.cured().stream().map(CureSearch::key).collect(Collectors.toSet());
            List<Finding> under = left.stream()
                    .filter(finding -> cured.contains(CureSearch.key(finding)) || notes(finding, cure))
                    .toList();
            if (!under.isEmpty()) {
                left.removeAll(under);
                causes.add(new Cause(Optional.of(cure), under));
            }
        }
        if (!left.isEmpty()) {
            causes.add(new Cause(Optional.empty(), left));
        }
        return List.copyOf(causes);
    }

    /** Information on the same row, about sizes that the figure touches. */
    private static boolean notes(Finding finding, WhatIf.Cure cure) {
        return finding.severity() == Severity.INFO
                && finding.subject().code().equals(cure.place().code())
                && (cure.isWholeRule() || !Collections.disjoint(finding.sizes(), cure.sizes()));
    }

    /**
     * What is the matter, in plain words.
     *
     * @return for example {@code The figure of bicep from 40 to 42 is behind 3 findings.}; empty where no single figure is
     */
    public Text words() {
        return cure.map(figure -> {
                    Text place = Text.of(
                                    figure.isWholeRule()
                                            ? "the rule of {measure}, {first} to {last}"
                                            : figure.sizes().size() == 1
                                                    ? "{measure} of size {first}"
                                                    : "the jump of {measure} from {first} to {last}")
                            .with("measure", Text.of(figure.place().code()))
                            .with("first", figure.sizes().get(0))
                            .with("last", figure.sizes().get(figure.sizes().size() - 1));
                    long alarms = findings.stream()
                            .filter(finding -> finding.severity() != Severity.INFO)
                            .count();
                    return Text.of(
                                    alarms == 1
                                            ? "One figure explains a finding: {place}."
                                            : "One figure explains {count} findings: {place}.")
                            .with("count", alarms)
                            .with("place", place);
                })
                .orElse(Text.name(""));
    }
}
