package org.capwright.json.schema;

import java.util.OptionalDouble;
import org.capwright.quantity.Unit;
import org.capwright.words.Text;

/** Reads an ease: a length, or a percentage such as {@code "4%"}. */
final class Eases {

    private Eases() {}

    /** The share, if the value is a percentage. */
    static OptionalDouble share(Given given, FieldType.Ease kind) {
        if (!isPercentage(given)) {
            return OptionalDouble.empty();
        }
        FieldType.Ratio range = kind.share();
        String text = given.node().stringValue();
        String number = text.strip().substring(0, text.strip().length() - 1).strip();
        if (!Lengths.DECIMAL.matcher(number).matches()) {
            given.refuse("must be a length, or a percentage such as 4%");
            return OptionalDouble.empty();
        }
        double share = Double.parseDouble(number) / 100;
        if (share < range.least() || share > range.greatest()) {
            given.refuse(Text.of("out of range: {value}; {least}% to {greatest}% would work")
                    .with("value", Texts.shortened(text))
                    .with("least", Math.round(100 * range.least()))
                    .with("greatest", Math.round(100 * range.greatest())));
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(share);
    }

    /** The length in mm, if the value is no percentage. */
    static OptionalDouble length(Given given, Unit unit, FieldType.Ease kind) {
        return isPercentage(given) ? OptionalDouble.empty() : Lengths.within(given, unit, kind.length());
    }

    private static boolean isPercentage(Given given) {
        return given.node().isString() && given.node().stringValue().strip().endsWith("%");
    }
}
