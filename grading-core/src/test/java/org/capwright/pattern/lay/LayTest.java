package org.capwright.pattern.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.*;
import java.util.*;
import org.capwright.measure.Unit;
import org.capwright.pattern.*;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.Material;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.*;

class LayTest {
    static void check(Lay lay, String seed) {
        List<Polygon> ps = lay.placements().stream()
                .map(p -> Outlines.polygon(p.outline()))
                .toList();
        double area = 0;
        for (int i = 0; i < ps.size(); i++) {
            assertTrue(ps.get(i).isValid());
            area += ps.get(i).getArea();
            Envelope e = ps.get(i).getEnvelopeInternal();
            assertTrue(
                    e.getMinX() > -1e-7
                            && e.getMinY() > -1e-7
                            && e.getMaxY() < lay.usableWidth() + 1e-7
                            && e.getMaxX() < lay.length() + 1e-7,
                    seed);
            for (int j = 0; j < i; j++) {
                if (!ps.get(i).getEnvelopeInternal().intersects(ps.get(j).getEnvelopeInternal())) continue;
                double a = ps.get(i).intersection(ps.get(j)).getArea();
                assertTrue(a < 1e-6, seed + " overlap " + a + " " + i + " " + j);
                if (lay.fabric().gap() > 0) {
                    double d = ps.get(i).distance(ps.get(j));
                    assertTrue(d > lay.fabric().gap() - 1e-7, seed + " distance " + d);
                }
            }
        }
        assertEquals(area, lay.area(), 1e-6 * area);
        assertTrue(lay.length() >= lay.areaBound() - 1e-9, seed);
    }

    @Test
    void first() throws Exception {
        Fabric cloth = new Fabric(Material.MAIN, 1000, Fabric.Laying.OPEN, Fabric.Nap.WITHOUT, 0, 0, 0, 0, 0, 50);
        Lay lay = Lay.of(List.of(PieceToCut.onePair(LayPieces.rectangle("a", 4, 500, 300))), cloth);
        assertEquals(600, lay.length(), 1e-9);
        for (Fabric.Laying laying : Fabric.Laying.values())
            for (Laying cut : new Laying[] {Laying.MIRRORED_PAIR})
                for (int pairs : new int[] {1, 3}) {
                    var sleeve = LayPieces.sleeve(PieceKind.UNDER_SLEEVE, "40", cut, 190, 135, 450, 130);
                    Lay l = Lay.of(
                            List.of(
                                    new PieceToCut(sleeve, pairs),
                                    new PieceToCut(
                                            LayPieces.sleeve(
                                                    PieceKind.OVERLAY_MAIN, "40", Laying.ON_FOLD, 190, 270, 200, 20),
                                            pairs)),
                            Fabric.plain(Material.MAIN, 1400, laying));
                    check(l, "");
                    Files.writeString(Path.of("/tmp/w/lay-" + laying + pairs + ".svg"), LaySvg.of(l, Unit.CENTIMETRE));
                }
        for (int seed = 0; seed < 150; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            List<PieceToCut> list = new ArrayList<>();
            for (int i = 0; i < 1 + seed % 4; i++)
                list.add(PieceToCut.onePair(LayPieces.star(
                        r, "s" + i, i % 2 == 0 ? Laying.FLAT : Laying.MIRRORED_PAIR, 200 + 300 * r.nextDouble())));
            double gap = seed % 3 == 0 ? 0 : 10 * r.nextDouble();
            Fabric f = new Fabric(
                    Material.MAIN,
                    1200,
                    seed % 2 == 0 ? Fabric.Laying.OPEN : Fabric.Laying.FOLDED,
                    seed % 5 == 0 ? Fabric.Nap.WITH : Fabric.Nap.WITHOUT,
                    0,
                    0,
                    0,
                    0,
                    gap,
                    50);
            check(Lay.of(list, f), "seed " + seed);
        }
    }
}
