package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/** Looks at the options alone, before anything is drafted. */
final class OptionChecks {

    private OptionChecks() {}

    static List<Violation> of(PatternOptions options) {
        List<Violation> found = new ArrayList<>();
        Allowances allowances = options.allowances();
        for (EdgeKind kind : EdgeKind.values()) {
            check(
                    found,
                    Option.SEAM_ALLOWANCE,
                    "outside what a seam allowance can be",
                    allowances.along(kind),
                    Allowances.WIDEST);
        }
        check(
                found,
                Option.TURN_OF_CLOTH,
                "outside what a turn of cloth can be",
                options.turnOfCloth(),
                PatternOptions.GREATEST_TURN_OF_CLOTH);
        check(
                found,
                Option.INTERFACING_OVERLAP,
                "the interfacing would reach beyond the allowances that it lies in",
                options.interfacingOverlap(),
                Math.min(
                        Math.min(allowances.attachedEdge(), allowances.hem()),
                        options.finishing().interfacing() == PleatInterfacing.CUT_AWAY
                                ? CutAway.NARROWEST
                                : Allowances.WIDEST));
        return found;
    }

    private static void check(List<Violation> found, Subject subject, String reason, double value, double most) {
        if (!(value >= 0 && value <= most)) {
            found.add(Violation.lengthOutside(subject, reason, value, 0, most));
        }
    }
}
