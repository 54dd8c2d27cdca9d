package org.capwright.exchange.hpgl;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Places boxes on a roll without overlap: side by side across the roll in shelves, the next shelf farther along. A box is turned by a quarter if boxes
 * of its size then take less length each, or if it does not fit otherwise.
 */
final class Shelves {

    /**
     * Where a box lies.
     *
     * @param along distance of its lower left corner along the roll, mm
     * @param across distance of its lower left corner from the right-hand edge of the roll, mm
     * @param turned whether it is turned
     */
    record Place(double along, double across, Turn turned) {}

    /** How a box lies. */
    enum Turn {
        /** Its width along the roll, its height across. */
        NONE,
        /** Turned a quarter counter-clockwise: its height along the roll, its width across. */
        QUARTER
    }

    /** A box: width and height in mm. */
    record Box(double width, double height) {

        double along(Turn turn) {
            return turn == Turn.NONE ? width : height;
        }

        double across(Turn turn) {
            return turn == Turn.NONE ? height : width;
        }
    }

    private Shelves() {}

    /**
     * Places boxes.
     *
     * @param boxes each no wider than the roll in one of its two positions
     * @param rollWidth width of the roll, mm
     * @param gap distance kept between boxes, mm
     * @return a place per box, in the order of the boxes
     */
    static List<Place> place(List<Box> boxes, double rollWidth, double gap) {
        List<Turn> turns = boxes.stream().map(box -> turn(box, rollWidth, gap)).toList();
        List<Integer> longestFirst = IntStream.range(0, boxes.size())
                .boxed()
                // To the micrometre, so that the last digits of equal ones do not move them.
                .sorted(Comparator.comparingDouble(
                        i -> -Math.rint(1000 * boxes.get(i).along(turns.get(i)))))
                .toList();
        List<Place> places = new ArrayList<>(
                boxes.stream().map(box -> new Place(0, 0, Turn.NONE)).toList());
        double along = 0;
        double across = 0;
        double next = 0;
        for (int i : longestFirst) {
            Box box = boxes.get(i);
            Turn turn = turns.get(i);
            if (across > 0 && across + box.across(turn) > rollWidth) {
                along = next;
                across = 0;
            }
            places.set(i, new Place(along, across, turn));
            across += box.across(turn) + gap;
            next = Math.max(next, along + box.along(turn) + gap);
        }
        return places;
    }

    /** The position in which boxes of this size, side by side, take the least length each. */
    private static Turn turn(Box box, double rollWidth, double gap) {
        return share(box, Turn.NONE, rollWidth, gap) <= share(box, Turn.QUARTER, rollWidth, gap)
                ? Turn.NONE
                : Turn.QUARTER;
    }

    private static double share(Box box, Turn turn, double rollWidth, double gap) {
        return box.across(turn) > rollWidth
                ? Double.POSITIVE_INFINITY
                : (box.along(turn) + gap) / Math.floor((rollWidth + gap) / (box.across(turn) + gap));
    }
}
