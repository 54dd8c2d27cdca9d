package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.capwright.geometry.Point;
import org.capwright.pattern.CutInstruction.Laying;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Polygon;

/** What must hold of every lay, judged by the JTS topology suite on the true outlines. */
final class LayChecks {

    private LayChecks() {}

    static void assertSound(Lay lay, List<PieceToCut> pieces, String seed) {
        List<Polygon> placed = lay.placements().stream()
                .map(placement -> Outlines.polygon(placement.outline()))
                .toList();
        double area = 0;
        for (int i = 0; i < placed.size(); i++) {
            Polygon polygon = placed.get(i);
            assertTrue(polygon.isValid(), seed);
            area += polygon.getArea();
            Envelope box = polygon.getEnvelopeInternal();
            assertTrue(box.getMinX() > -1e-7 && box.getMaxX() < lay.length() + 1e-7, () -> seed + " length: " + box);
            assertTrue(
                    box.getMinY() > -1e-7 && box.getMaxY() < lay.usableWidth() + 1e-7, () -> seed + " width: " + box);
            for (int j = 0; j < i; j++) {
                Envelope near = new Envelope(placed.get(j).getEnvelopeInternal());
                near.expandBy(lay.fabric().gap());
                if (near.intersects(box)) {
                    String which = seed + " pieces " + j + " and " + i;
                    double overlap = polygon.intersection(placed.get(j)).getArea();
                    assertTrue(overlap < 1e-6, which + " overlap by " + overlap + " mm²");
                    double distance = polygon.distance(placed.get(j));
                    assertTrue(distance > lay.fabric().gap() - 1e-7, which + " are only apart " + distance);
                }
            }
            assertWellPlaced(lay, lay.placements().get(i), box, seed);
        }
        assertEquals(area, lay.area(), 1e-9 * area, seed);
        assertTrue(lay.length() >= lay.areaBound() - 1e-9, seed);
        assertTrue(lay.utilisation() > 0 && lay.utilisation() <= 1 + 1e-12, seed);
        for (PieceToCut cut : pieces) {
            assertCut(lay, cut, seed);
        }
    }

    private static void assertWellPlaced(Lay lay, Placement placement, Envelope box, String seed) {
        Point up = placement.onLay(placement.grain()).minus(placement.onLay(Point.ORIGIN));
        assertEquals(placement.rotation() == 0 ? 1 : -1, up.x(), 1e-9, seed + ": grain along the cloth");
        assertEquals(0, up.y(), 1e-9, seed + ": grain along the cloth");
        if (lay.fabric().nap() == Fabric.Nap.WITH) {
            assertEquals(0, placement.rotation(), seed + ": all one way");
        }
        for (Point drafted : placement.piece().cutLine()) {
            Point there = placement.onLay(drafted);
            double nearest = placement.outline().stream()
                    .mapToDouble(there::distanceTo)
                    .min()
                    .orElseThrow();
            if (placement.cover() != Placement.Cover.OPENED_OUT || Math.abs(drafted.x()) > 1e-9) {
                assertEquals(0, nearest, 1e-9, seed + ": the outline is the cut line, moved");
            }
        }
        if (placement.cover() == Placement.Cover.HALF_ON_FOLD) {
            assertEquals(0, box.getMinY(), 1e-9, seed + ": fold edge on the fold");
        } else if (lay.fabric().laying() == Fabric.Laying.FOLDED) {
            assertTrue(box.getMinY() > lay.fabric().gap() - 1e-9, seed + ": off the fold");
        }
    }

    private static void assertCut(Lay lay, PieceToCut cut, String seed) {
        int drawn = 0;
        int mirrored = 0;
        for (Placement placement : lay.placements()) {
            if (placement.piece() != cut.piece()) {
                continue;
            }
            if (placement.yields() == 2) {
                drawn++;
                mirrored++; // the lower layer lies face to face
            } else if (placement.facing() == Placement.Facing.AS_DRAWN) {
                drawn++;
            } else {
                mirrored++;
            }
        }
        int needed = cut.piece().cut().count() * cut.pairs();
        int spare = drawn + mirrored - needed;
        assertTrue(spare == 0 || (spare == 1 && lay.fabric().laying() == Fabric.Laying.FOLDED), seed + ": all are cut");
        if (cut.piece().cut().laying() == Laying.MIRRORED_PAIR) {
            assertTrue(Math.abs(drawn - mirrored) <= 1, seed + ": left and right");
        } else if (cut.piece().cut().laying() == Laying.FLAT && lay.fabric().laying() == Fabric.Laying.OPEN) {
            assertEquals(0, mirrored, seed);
        }
    }
}
