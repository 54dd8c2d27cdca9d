package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.grade.GradedSize;
import org.capwright.pattern.PatternSet;

/** The texts that a drawing states about the whole style. */
final class Style {

    private static final double HEIGHT = 5;
    private static final double DISTANCE = 10;

    private Style() {}

    static List<String> texts(PatternSet set, Optional<LocalDate> created) {
        List<String> texts = new ArrayList<>();
        texts.add("STYLE NAME: " + set.title().style());
        texts.add("REVISION: " + set.title().revision());
        created.ifPresent(date -> texts.add("CREATION DATE: " + date));
        texts.add("AUTHOR: CAPWRIGHT");
        texts.add("SAMPLE SIZE: " + set.run().baseSize().label());
        texts.add("UNITS: METRIC");
        texts.add("ANNOTATION: 1 drawing unit = 1 mm");
        texts.add("ANNOTATION: sizes "
                + String.join(
                        " ", set.run().sizes().stream().map(GradedSize::label).toList()));
        return texts;
    }

    /** Writes texts one under another below all that is drawn. */
    static void write(DxfWriter writer, String layer, List<String> texts) {
        Box drawn = writer.extents();
        double left = drawn.isEmpty() ? 0 : drawn.left();
        double below = drawn.isEmpty() ? 0 : drawn.bottom();
        for (int i = 0; i < texts.size(); i++) {
            writer.text(layer, new Point(left, below - 2 * DISTANCE - i * DISTANCE), HEIGHT, texts.get(i));
        }
    }
}
