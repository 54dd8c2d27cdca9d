package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.geometry.Box;
import org.capwright.geometry.Placing;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/** Stands an outline upright and finds the sleeve in it. */
final class SleeveFinder {

    /** The least and the greatest size of what is looked at as it is drawn, mm; what is smaller or larger is in another unit. */
    private static final double SMALLEST = 150;

    private static final double LARGEST = 4000;

    /** What a sleeve measures from corner to corner, about; one in another unit is brought to this to be looked at. */
    private static final double USUAL = 700;

    /** The least share of the width of an overlay that lies under its top edge. */
    private static final double WHOLE = 0.9;

    private static final Text BY_GRAIN = Text.of("upright by its grain line");
    private static final Text AS_DRAWN = Text.of("upright as drawn");

    private SleeveFinder() {}

    /** A shape and the way up in which it was found. */
    private record Upright(SleeveAxis axis, SleeveShape shape) {}

    /**
     * The shape of an overlay: to its first corner as a sleeve, unless its top edge is cut for pleats. A bowed hem looks like a cap, so a plain one is looked at the other way up as well.
     */
    static SleeveShape overlay(SizedPiece piece) throws SleeveShape.NoSleeve {
        Optional<Upright> plain = Optional.empty();
        Optional<Text> reason = Optional.empty();
        try {
            Upright upright = upright(piece);
            if (upright.shape.bicep() >= WHOLE * upright.shape.across()) {
                plain = Optional.of(upright);
            }
        } catch (SleeveShape.NoSleeve e) {
            reason = Optional.of(e.reason());
        }
        List<SleeveShape> pleated = new ArrayList<>();
        for (SleeveAxis axis :
                plain.map(found -> List.of(found.axis, found.axis.turned())).orElseGet(() -> byGrainOrSheet(piece))) {
            try {
                SleeveShape wide = shape(piece, axis, SleeveShape.Underarm.OUTERMOST);
                if (wide.jagged() && isSure(axis, wide)) {
                    pleated.add(wide);
                }
            } catch (SleeveShape.NoSleeve e) {
                reason = reason.or(() -> Optional.of(e.reason()));
            }
        }
        if (pleated.size() == 1) {
            return pleated.get(0);
        }
        if (plain.isPresent() && pleated.isEmpty()) {
            return plain.get().shape;
        }
        throw new SleeveShape.NoSleeve(reason.filter(why -> pleated.isEmpty())
                .orElse(Text.of("nothing shows which way up it lies; draw a grain line")));
    }

    /** The shape of a sleeve. */
    static SleeveShape sleeve(SizedPiece piece) throws SleeveShape.NoSleeve {
        return upright(piece).shape;
    }

    private static Upright upright(SizedPiece piece) throws SleeveShape.NoSleeve {
        Optional<SleeveAxis> axis =
                SleeveAxis.of(SleeveShape.cleaned(piece.outline().points(), Placing.scale(scale(piece))), marks(piece));
        if (axis.isPresent()) {
            return new Upright(axis.get(), shape(piece, axis.get(), SleeveShape.Underarm.FIRST_CORNER));
        }
        Optional<Text> reason = Optional.empty();
        for (SleeveAxis tried : byGrainOrSheet(piece)) {
            try {
                SleeveShape shape = shape(piece, tried, SleeveShape.Underarm.FIRST_CORNER);
                if (isSure(tried, shape)) {
                    return new Upright(tried, shape);
                }
                reason = Optional.of(Text.of("its underarm corners do not lie level, and it has no grain line"));
            } catch (SleeveShape.NoSleeve e) {
                reason = reason.or(() -> Optional.of(e.reason()));
            }
        }
        throw new SleeveShape.NoSleeve(reason.orElse(Text.of("nothing shows which way up it lies; draw a grain line")));
    }

    /** Whether more than the sheet shows the way up: a grain line, a fold, or underarm points on one level. */
    private static boolean isSure(SleeveAxis axis, SleeveShape shape) {
        return axis.how().equals(BY_GRAIN) || shape.half() != SleeveShape.Half.NONE || shape.level();
    }

    private static SleeveShape shape(SizedPiece piece, SleeveAxis axis, SleeveShape.Underarm underarm)
            throws SleeveShape.NoSleeve {
        double scale = scale(piece);
        Placing upright = Placing.turn(axis.degrees()).after(Placing.scale(scale));
        SleeveShape shape =
                SleeveShape.of(piece.outline().points(), upright, underarm).shown(axis.how());
        return scale == 1 ? shape : shape.times(1 / scale);
    }

    /** How many times as large as drawn a piece is looked at: 1, unless no sleeve can be as small or as large. */
    static double scale(SizedPiece piece) {
        return scale(piece.outline().box());
    }

    static double scale(Box box) {
        double across = Math.hypot(box.right() - box.left(), box.top() - box.bottom());
        return across < SMALLEST || across > LARGEST ? USUAL / across : 1;
    }

    private static List<DrawnLine> marks(SizedPiece piece) {
        double scale = scale(piece);
        return piece.marks().stream()
                .map(mark -> new DrawnLine(
                        mark.layer(),
                        mark.colour(),
                        mark.instance(),
                        mark.line(),
                        mark.closed(),
                        List.of(mark.start().times(scale), mark.end().times(scale))))
                .toList();
    }

    /** The ways up of a piece whose edges show none: along its grain line, both ways; without one as drawn and turned by quarters. */
    private static List<SleeveAxis> byGrainOrSheet(SizedPiece piece) {
        for (DrawnLine mark : piece.marks()) {
            if (LineRole.of(mark.layer()) == LineRole.GRAIN) {
                Point along = mark.end().minus(mark.start());
                double up = 90 - Math.toDegrees(Math.atan2(along.y(), along.x()));
                double asDrawn = Math.abs(Math.IEEEremainder(up, 360)) <= 90 ? up : up + 180;
                double exact =
                        Math.abs(Math.IEEEremainder(asDrawn, 90)) < 1e-4 ? 90 * Math.rint(asDrawn / 90) : asDrawn;
                return List.of(new SleeveAxis(exact, BY_GRAIN), new SleeveAxis(exact + 180, BY_GRAIN));
            }
        }
        return List.of(
                new SleeveAxis(0, AS_DRAWN),
                new SleeveAxis(180, AS_DRAWN),
                new SleeveAxis(90, AS_DRAWN),
                new SleeveAxis(270, AS_DRAWN));
    }
}
