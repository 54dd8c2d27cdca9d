package org.capwright.lay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.capwright.geometry.Point;
import org.capwright.pattern.CutInstruction.Laying;
import org.capwright.pattern.Material;
import org.capwright.pattern.Piece;
import org.capwright.pattern.PieceKind;
import org.capwright.quantity.Unit;
import org.capwright.report.LayPicture;
import org.capwright.words.Language;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Polygon;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class LayPictureTest {

    @ParameterizedTest
    @EnumSource(Fabric.Laying.class)
    void pictureIsTrueToTheLay(Fabric.Laying laying) throws Exception {
        Piece sleeve = LayPieces.sleeve(PieceKind.UNDER_SLEEVE, "4<0&", Laying.MIRRORED_PAIR, 190, 135, 450, 130);
        Piece overlay = LayPieces.sleeve(PieceKind.OVERLAY_MAIN, "4<0&", Laying.ON_FOLD, 190, 270, 200, 20);
        Lay lay = Lay.of(
                List.of(new PieceToCut(sleeve, 2), new PieceToCut(overlay, 2)),
                Fabric.plain(Material.MAIN, 1400, laying));
        String svg = LayPicture.svg(lay, Unit.CENTIMETRE, Language.ENGLISH);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        Document document = factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        Element root = document.getDocumentElement();
        String[] box = root.getAttribute("viewBox").split(" ");
        assertEquals(box[2] + "mm", root.getAttribute("width"), "one unit is one millimetre");
        assertEquals(box[3] + "mm", root.getAttribute("height"));
        List<Polygon> drawn = new ArrayList<>();
        int arrows = 0;
        NodeList paths = document.getElementsByTagName("path");
        for (int i = 0; i < paths.getLength(); i++) {
            Element path = (Element) paths.item(i);
            if (path.getAttribute("d").endsWith("Z")) {
                drawn.add(polygon(path.getAttribute("d")));
            } else if (path.getAttribute("class").equals("grain")) {
                arrows++;
            }
        }
        assertEquals(lay.placements().size(), drawn.size());
        assertEquals(lay.placements().size(), arrows);
        for (int i = 0; i < drawn.size(); i++) {
            Polygon placed = Outlines.polygon(lay.placements().get(i).outline());
            assertEquals(placed.getArea(), drawn.get(i).getArea(), 1e-3 * placed.getArea());
            assertEquals(
                    placed.getEnvelopeInternal().getMinX(),
                    drawn.get(i).getEnvelopeInternal().getMinX(),
                    0.006);
        }
        String words = root.getTextContent();
        assertTrue(words.contains("Under-sleeve") && words.contains("Overlay") && words.contains("size 4<0&"), words);
        assertTrue(words.contains(laying == Fabric.Laying.FOLDED ? "fold" : "opened out"), words);
        assertEquals(svg, LayPicture.svg(lay, Unit.CENTIMETRE, Language.ENGLISH), "the same again");
        assertTrue(LayPicture.svg(lay, Unit.INCH, Language.ENGLISH).contains(" in wide"));
    }

    private static Polygon polygon(String d) {
        List<Point> points = new ArrayList<>();
        for (String pair : d.substring(1, d.length() - 1).split("L")) {
            String[] xy = pair.split(" ");
            points.add(new Point(Double.parseDouble(xy[0]), Double.parseDouble(xy[1])));
        }
        return Outlines.polygon(points);
    }
}
