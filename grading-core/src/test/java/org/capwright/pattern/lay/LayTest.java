package org.capwright.pattern.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.Material;
import org.junit.jupiter.api.Test;

class LayTest {
    @Test
    void first() {
        Fabric cloth = new Fabric(Material.MAIN, 1000, Fabric.Laying.OPEN, Fabric.Nap.WITHOUT, 0, 0, 0, 0, 0, 50);
        Lay lay = Lay.of(List.of(PieceToCut.onePair(LayPieces.rectangle("a", 4, 500, 300))), cloth);
        assertEquals(600, lay.length(), 1e-9);
        var sleeve = LayPieces.sleeve(
                org.capwright.pattern.PieceKind.UNDER_SLEEVE, "40", Laying.MIRRORED_PAIR, 190, 135, 450, 130);
        for (int k = 0; k < 5; k++) {
            for (int pairs : new int[] {1, 2, 4, 8}) {
                long t = System.nanoTime();
                Lay l = Lay.of(
                        List.of(
                                new PieceToCut(sleeve, pairs),
                                new PieceToCut(
                                        LayPieces.sleeve(
                                                org.capwright.pattern.PieceKind.OVERLAY_MAIN,
                                                "40",
                                                Laying.ON_FOLD,
                                                190,
                                                270,
                                                200,
                                                20),
                                        pairs)),
                        Fabric.plain(Material.MAIN, 1400, Fabric.Laying.OPEN));
                System.out.println(pairs + " " + l.length() + " " + l.utilisation() + " "
                        + l.placements().size() + " ms " + (System.nanoTime() - t) / 1e6);
            }
        }
    }
}
