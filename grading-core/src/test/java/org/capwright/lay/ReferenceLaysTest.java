package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.capwright.geometry.Point;
import org.capwright.pattern.CutInstruction;
import org.capwright.pattern.Material;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceKind;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Fifty kept lays: all together take no more cloth than the first release needed, whatever the search does now. */
class ReferenceLaysTest {

    private record Reference(double length, Fabric fabric, List<PieceToCut> pieces) {}

    private static final List<Reference> REFERENCES = new ArrayList<>();

    @BeforeAll
    static void read() throws IOException {
        Map<String, Piece> pieces = new HashMap<>();
        for (String line : Files.readAllLines(Path.of("src/test/resources/reference-lays.txt"))) {
            String[] words = line.split(" ");
            if (words[0].equals("piece")) {
                pieces.put(words[1], piece(words));
            } else if (words[0].equals("lay")) {
                List<PieceToCut> cutting = new ArrayList<>();
                for (int i = 5; i < words.length; i++) {
                    String[] cut = words[i].split(":");
                    cutting.add(new PieceToCut(pieces.get(cut[0]), Integer.parseInt(cut[1])));
                }
                Fabric fabric =
                        Fabric.plain(Material.MAIN, Double.parseDouble(words[2]), Fabric.Laying.valueOf(words[3]));
                REFERENCES.add(new Reference(
                        Double.parseDouble(words[1]), fabric.withNap(Fabric.Nap.valueOf(words[4])), cutting));
            }
        }
    }

    private static Piece piece(String[] words) {
        List<Point> outline = new ArrayList<>();
        for (int i = 4; i < words.length; i++) {
            String[] xy = words[i].split(",");
            outline.add(new Point(Double.parseDouble(xy[0]), Double.parseDouble(xy[1])));
        }
        return LayPieces.piece(
                PieceKind.UNDER_SLEEVE,
                words[1],
                Integer.parseInt(words[3]),
                CutInstruction.Laying.valueOf(words[2]),
                outline);
    }

    @Test
    void theyTakeNoMoreClothThanInTheFirstRelease() {
        assertEquals(50, REFERENCES.size());
        double before = 0;
        double now = 0;
        for (Reference reference : REFERENCES) {
            Lay lay = Lay.of(reference.pieces, reference.fabric);
            LayChecks.assertSound(lay, reference.pieces, reference.fabric.toString());
            before += reference.length;
            now += lay.length();
        }
        assertTrue(now <= before, now + " mm, " + before + " in the first release");
    }

    /** More effort never costs cloth by much, and in all it saves some; the searches take different courses, so single lays may differ either way. */
    @Test
    void moreEffortSavesCloth() {
        double quick = 0;
        double usual = 0;
        for (Reference reference : REFERENCES) {
            quick += lay(reference, LayEffort.QUICK).length();
            usual += lay(reference, LayEffort.USUAL).length();
        }
        assertTrue(usual < quick, usual + " mm, " + quick + " at a first look");
    }

    /** However little is left to a lay, every piece finds a place. */
    @Test
    void alwaysComesToAnEnd() {
        for (Reference reference : REFERENCES) {
            Lay lay = Lay.of(reference.pieces, reference.fabric, LayEffort.QUICK, 0);
            LayChecks.assertSound(lay, reference.pieces, reference.fabric.toString());
        }
    }

    private static Lay lay(Reference reference, LayEffort effort) {
        return Lay.of(reference.pieces, reference.fabric, effort, effort.mostInAll());
    }
}
