package org.capwright.pattern;

import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Box;
import org.capwright.geometry.Curve;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;

/**
 * Finds the place where the words on a piece can be largest: inside the net line and off every line drawn in the piece. The lines are set as they are or broken further. Where not even
 * the least legible height has room, lines are cut short, and the last ones left out.
 */
final class LabelPlacement {

    /** The greatest line height that is used, mm. */
    static final double TALLEST = 8;

    /** The least line height that is read with ease, mm. Common practice, no source. */
    static final double LEAST = 3;

    /** A line height that is large enough: rather than writing larger, lines are left whole. Common practice, no source. */
    static final double COMFORTABLE = 5;

    private static final double CLEARANCE = 1.5;

    /** Marks are as good as straight lines for words that keep clear of them, mm. */
    private static final double FLATTENING = 0.2;

    private static final int MOST_BREAKS = 4;

    /** Of places that are equally large but for rounding the first is taken. */
    private static final double LARGER = 1 + 1e-9;

    /** Marks do not all grow with the piece: a place carried over is tried this often, each time a clearance narrower. */
    private static final int MOST_NARROWER = 2;

    private LabelPlacement() {}

    /** A way to write the label. */
    private record Choice(List<String> lines, Box place, double lineHeight) {}

    /** Looks where words have room within a net line, off the lines drawn there. */
    static FreeCells free(Ring net, List<Curve> lines) {
        return FreeCells.of(net, lines, FLATTENING, CLEARANCE);
    }

    /**
     * Puts the words where the piece has them in another size, so that the words of a nest lie over one another, and room is looked for in one size alone. Nothing where they have no room there, or would be
     * less comfortable to read.
     */
    static Optional<PieceLabel> like(LabelPlace other, List<String> lines, PieceInside inside) {
        List<String> setting = broken(lines, other.label().lines().size());
        double widest = TextWidth.widest(setting);
        Box whole = other.block(inside.box());
        for (int narrower = 0; narrower <= MOST_NARROWER; narrower++) {
            Box block = whole.grown(-CLEARANCE * narrower);
            double height = Math.min(TALLEST, Math.min(block.height() / setting.size(), block.width() / widest));
            if (height >= COMFORTABLE && isFree(block, inside)) {
                return Optional.of(
                        new PieceLabel(setting, new Point(block.left(), block.top()), height, block.width()));
            }
        }
        return Optional.empty();
    }

    /** The least broken setting with as many lines. */
    private static List<String> broken(List<String> lines, int count) {
        List<String> setting = lines;
        for (int parts = 2; parts <= MOST_BREAKS && setting.size() < count; parts++) {
            setting = TextWidth.broken(lines, TextWidth.widest(lines) / parts);
        }
        return setting;
    }

    private static boolean isFree(Box block, PieceInside inside) {
        Box clear = block.grown(CLEARANCE);
        if (inside.net().meets(clear) || !inside.net().contains(block.middle())) {
            return false;
        }
        for (Curve line : inside.lines()) {
            if (meets(clear, line)) {
                return false;
            }
        }
        return true;
    }

    private static boolean meets(Box box, Curve line) {
        if (line.isStraight()) {
            return box.meets(line.start(), line.end());
        }
        Points points = line.flattened(FLATTENING);
        for (int i = 1; i < points.size(); i++) {
            if (box.meets(points.x(i - 1), points.y(i - 1), points.x(i), points.y(i))) {
                return true;
            }
        }
        return false;
    }

    static PieceLabel place(List<String> lines, FreeCells free) {
        Choice best = new Choice(List.of(), new Box(0, 0, 0, 0), 0);
        double widest = TextWidth.widest(lines);
        for (int parts = 1; parts <= MOST_BREAKS && best.lineHeight() < COMFORTABLE; parts++) {
            List<String> setting = parts == 1 ? lines : TextWidth.broken(lines, widest / parts);
            Choice choice = largest(setting, free);
            if (choice.lineHeight() > best.lineHeight() + 1e-9) {
                best = choice;
            }
        }
        if (best.lineHeight() < LEAST) {
            best = shortened(lines, free);
        }
        double height = Math.min(TALLEST, best.lineHeight());
        Box place = best.place();
        double slack = Math.max(0, place.height() - height * best.lines().size()) / 2;
        return new PieceLabel(best.lines(), new Point(place.left(), place.top() - slack), height, place.width());
    }

    private static Choice largest(List<String> lines, FreeCells free) {
        double width = TextWidth.widest(lines);
        double tallest = 0;
        int best = -1;
        for (int i = 0; i < free.count(); i++) {
            double height = Math.min(free.heightOf(i) / lines.size(), free.widthOf(i) / width);
            if (height > LARGER * tallest) {
                tallest = height;
                best = i;
            }
        }
        return new Choice(lines, best < 0 ? new Box(0, 0, 0, 0) : free.box(best), tallest);
    }

    /** The rectangle that shows most of the lines at the least height; on a piece too small even for that, the first two letters as large as they can be. */
    private static Choice shortened(List<String> lines, FreeCells free) {
        Choice best = largest(List.of(TextWidth.shortened(lines.get(0), 2)), free);
        double most = 0;
        for (int i = 0; i < free.count(); i++) {
            int count = (int) Math.min(lines.size(), Math.floor(free.heightOf(i) / LEAST));
            double letters = Math.min(free.widthOf(i) / LEAST, TextWidth.widest(lines));
            if (letters >= 2 && count * letters > LARGER * most) {
                most = count * letters;
                best = new Choice(
                        lines.subList(0, count).stream()
                                .map(line -> TextWidth.shortened(line, letters))
                                .toList(),
                        free.box(i),
                        LEAST);
            }
        }
        return best;
    }
}
