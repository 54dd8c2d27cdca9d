package org.capwright.exchange.hpgl;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.capwright.exchange.hpgl.Shelves.Box;
import org.capwright.exchange.hpgl.Shelves.Place;
import org.capwright.exchange.hpgl.Shelves.Turn;
import org.junit.jupiter.api.Test;

class ShelvesTest {

    private static final double ROLL = 900;
    private static final double GAP = 10;

    /** Boxes of few sizes, so that many are equal, as front and back of a sleeve are. */
    private static List<Box> boxes(SplittableRandom random) {
        List<Box> kinds = Stream.generate(() -> new Box(random.nextDouble(50, ROLL), random.nextDouble(50, ROLL)))
                .limit(3)
                .toList();
        return Stream.generate(() -> kinds.get(random.nextInt(3))).limit(10).toList();
    }

    @Test
    void boxesLieApartOnTheRoll() {
        SplittableRandom random = new SplittableRandom(11);
        for (int seed = 0; seed < 300; seed++) {
            List<Box> boxes = boxes(random);
            List<Place> places = Shelves.place(boxes, ROLL, GAP);
            List<double[]> taken = new ArrayList<>();
            for (int i = 0; i < boxes.size(); i++) {
                Place place = places.get(i);
                boolean quarter = place.turned() == Turn.QUARTER;
                double along = quarter ? boxes.get(i).height() : boxes.get(i).width();
                double across = quarter ? boxes.get(i).width() : boxes.get(i).height();
                double[] box = {place.along(), place.across(), place.along() + along, place.across() + across};
                assertTrue(box[0] >= 0 && box[1] >= 0 && box[3] <= ROLL + 1e-9, "set " + seed);
                for (double[] other : taken) {
                    double apart = Math.max(
                            Math.max(box[0] - other[2], other[0] - box[2]),
                            Math.max(box[1] - other[3], other[1] - box[3]));
                    assertTrue(apart >= GAP - 1e-9, "set " + seed + ": " + apart + " mm apart");
                }
                taken.add(box);
            }
        }
    }

    @Test
    void equalBoxesKeepTheirOrderWhateverTheirLastDigits() {
        SplittableRandom random = new SplittableRandom(12);
        for (int seed = 0; seed < 300; seed++) {
            List<Box> boxes = boxes(random);
            List<Box> nearly = boxes.stream()
                    .map(box -> new Box(
                            box.width() + random.nextDouble(-1e-11, 1e-11),
                            box.height() + random.nextDouble(-1e-11, 1e-11)))
                    .toList();
            List<Place> places = Shelves.place(boxes, ROLL, GAP);
            List<Place> again = Shelves.place(nearly, ROLL, GAP);
            for (int i = 0; i < boxes.size(); i++) {
                assertEquals(places.get(i).along(), again.get(i).along(), 1e-6, "set " + seed);
                assertEquals(places.get(i).across(), again.get(i).across(), 1e-6, "set " + seed);
            }
        }
    }
}
