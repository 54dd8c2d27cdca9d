package org.capwright.pattern.lay;

import java.util.*;
import org.capwright.pattern.*;
import org.capwright.pattern.CutInstruction.Laying;
import org.junit.jupiter.api.Test;

class ScratchTest {
    @Test
    void quality() {
        List<List<PieceToCut>> sets = new ArrayList<>();
        List<Fabric> fs = new ArrayList<>();
        for (Fabric.Laying laying : Fabric.Laying.values())
            for (double w : new double[] {1150, 1400, 1500})
                for (int pairs : new int[] {1, 2, 3, 5}) {
                    var sleeve =
                            LayPieces.sleeve(PieceKind.UNDER_SLEEVE, "40", Laying.MIRRORED_PAIR, 190, 135, 450, 130);
                    sets.add(List.of(
                            new PieceToCut(sleeve, pairs),
                            new PieceToCut(
                                    LayPieces.sleeve(PieceKind.OVERLAY_MAIN, "40", Laying.ON_FOLD, 190, 270, 200, 20),
                                    pairs)));
                    fs.add(Fabric.plain(Material.MAIN, w, laying));
                }
        for (int seed = 0; seed < 20; seed++) {
            SplittableRandom r = new SplittableRandom(seed);
            List<PieceToCut> list = new ArrayList<>();
            for (int i = 0; i < 1 + seed % 6; i++)
                list.add(PieceToCut.onePair(LayPieces.star(
                        r, "s" + i, i % 2 == 0 ? Laying.FLAT : Laying.MIRRORED_PAIR, 200 + 300 * r.nextDouble())));
            sets.add(list);
            fs.add(Fabric.plain(Material.MAIN, 1200, Fabric.Laying.OPEN));
        }
        Fabric cloth = new Fabric(Material.MAIN, 112, Fabric.Laying.OPEN, Fabric.Nap.WITHOUT, 0, 0, 0, 0, 0, 50);
        List<PieceToCut> sq = new ArrayList<>();
        for (int a : new int[] {50, 35, 27, 8, 19, 15, 17, 11, 6, 24, 29, 25, 9, 2, 7, 18, 16, 42, 4, 37, 33})
            sq.add(PieceToCut.onePair(LayPieces.rectangle("" + a, 1, a, a)));
        sets.add(sq);
        fs.add(cloth);
        for (long b : new long[] {100_000, 100_000, 30_000, 100_000, 300_000, 1_000_000, 3_000_000}) {
            Lay.BUDGET = b;
            double u1 = 0, u2 = 0;
            long t1 = 0, t2 = 0, most = 0;
            double us = 0;
            for (int i = 0; i < sets.size(); i++) {
                long t = System.nanoTime();
                Lay l = Lay.of(sets.get(i), fs.get(i));
                t = System.nanoTime() - t;
                if (i < 24) {
                    u1 += l.utilisation() / 24;
                    t1 += t / 24;
                    most = Math.max(most, t);
                } else if (i < 44) {
                    u2 += l.utilisation() / 20;
                    t2 += t / 20;
                } else {
                    us = l.utilisation();
                    System.out.println("square ms " + t / 1e6);
                }
            }
            System.out.printf(
                    "%d sleeves %.4f %.1f ms (max %.1f) stars %.4f %.1f ms square %.4f%n",
                    b, u1, t1 / 1e6, most / 1e6, u2, t2 / 1e6, us);
        }
    }
}
