package org.capwright.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.CheckedSize;
import org.capwright.check.Crossing;
import org.capwright.check.NestLine;
import org.capwright.geometry.Point;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The nest of a checked grade, read by the parser of the JDK; crossings against closed forms. */
class NestPictureTest {

    /** A triangle of lines with its apex at a height over a width: two of them cross where simple algebra says. */
    private static CheckedSize tent(String label, double halfWidth, double height) {
        List<Point> points = new ArrayList<>();
        points.add(new Point(-halfWidth, 0));
        points.add(new Point(0, height));
        points.add(new Point(halfWidth, 0));
        return new CheckedSize(
                label,
                Map.of(CheckedMeasure.BICEP, 2 * halfWidth, CheckedMeasure.CAP_HEIGHT, height),
                List.of(new NestLine(NestLine.Kind.CAP_LINE, points)));
    }

    private static Document parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<Element> of(Document document, String tag, String kind) {
        NodeList all = document.getElementsByTagName(tag);
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < all.getLength(); i++) {
            Element element = (Element) all.item(i);
            if (element.getAttribute("class").equals(kind)) {
                found.add(element);
            }
        }
        return found;
    }

    /**
     * Tents y = 100 (1 - x/100) and y = 80 (1 - x/120): the larger is lower in the middle. They cross where 100 - x = 80 - 2x/3, at x = 60, y = 40; the deepest point of the dip is the
     * smaller apex, (0, 100), whose nearest point of the larger line is its apex: the feet of the perpendiculars on its legs lie beyond it.
     */
    @Test
    void crossingsLieWhereAlgebraPutsThem() {
        CheckedGrade grade = new CheckedGrade(List.of(tent("38", 100, 100), tent("40", 120, 80)), 0, Optional.empty());
        List<Crossing> crossings = Crossing.of(grade);
        assertEquals(1, crossings.size());
        assertEquals(20, crossings.get(0).depth(), 1e-9);
        assertEquals(2, crossings.get(0).at().size());
        for (Point at : crossings.get(0).at()) {
            assertEquals(60, Math.abs(at.x()), 1e-9);
            assertEquals(40, at.y(), 1e-9);
        }
    }

    @Test
    void nestedLinesDoNotCross() {
        CheckedGrade grade = new CheckedGrade(List.of(tent("38", 100, 100), tent("40", 120, 110)), 0, Optional.empty());
        assertEquals(List.of(), Crossing.of(grade));
        assertTrue(NestPicture.write("Gown", grade, Unit.CENTIMETRE, Language.ENGLISH)
                .contains("No line crosses another"));
    }

    @Test
    void crossingsAreCircledNumberedAndTold() throws Exception {
        CheckedGrade grade = new CheckedGrade(
                List.of(tent("38", 100, 100), tent("40", 120, 80), tent("42", 130, 70)), 1, Optional.empty());
        Document picture = parsed(NestPicture.write("A <gown> & more", grade, Unit.CENTIMETRE, Language.ENGLISH));
        List<Crossing> crossings = Crossing.of(grade);
        assertEquals(2, crossings.size());
        assertEquals(4, of(picture, "path", "crossing").size());
        assertEquals(
                List.of("1", "2"),
                of(picture, "text", "number").stream()
                        .map(Element::getTextContent)
                        .toList());
        String words = picture.getDocumentElement().getTextContent();
        assertTrue(words.contains("1  cap line: size 40 dips 2 cm inside size 38"), words);
        assertTrue(words.contains("A <gown> & more"), words);
    }

    /** Every size has dashes of its own, so that no colour is needed, and its name stands on its line and in the key. */
    @Test
    void sizesAreToldApartWithoutColour() throws Exception {
        CheckedGrade grade = CheckedGrade.of(org.capwright.check.ChoirGown.run());
        Document picture = parsed(NestPicture.write("Gown", grade, Unit.MILLIMETRE, Language.ENGLISH));
        Set<String> dashes = new HashSet<>();
        List<Element> key = of(picture, "path", "key");
        key.forEach(line -> dashes.add(line.getAttribute("stroke-dasharray")));
        assertEquals(grade.sizes().size(), dashes.size());
        assertEquals(2 * grade.sizes().size(), of(picture, "text", "name").size());
        assertEquals(3 * grade.sizes().size(), of(picture, "path", "line").size());
    }

    /** Lines of one piece lie within one another's reach, those of the other beside them, even where only the hem of the overlay is drawn. */
    @Test
    void sleeveAndOverlayLieApart() throws Exception {
        CheckedGrade grade = new CheckedGrade(
                List.of(new CheckedSize(
                        "40",
                        Map.of(CheckedMeasure.BICEP, 200.0),
                        List.of(
                                tent("40", 100, 90).lines().get(0),
                                new NestLine(
                                        NestLine.Kind.OVERLAY_HEM,
                                        List.of(new Point(-100, 0), new Point(0, -200), new Point(100, 0)))))),
                0,
                Optional.empty());
        String svg = NestPicture.write("Gown", grade, Unit.MILLIMETRE, Language.ENGLISH);
        List<double[]> reach = of(parsed(svg), "path", "line").stream()
                .map(line -> java.util.regex.Pattern.compile("(-?[0-9.]+)[ ,](-?[0-9.]+)")
                        .matcher(line.getAttribute("d"))
                        .results()
                        .mapToDouble(point -> Double.parseDouble(point.group(1)))
                        .toArray())
                .toList();
        assertEquals(2, reach.size());
        double sleeveEnds = java.util.Arrays.stream(reach.get(0)).max().orElseThrow();
        double overlayBegins = java.util.Arrays.stream(reach.get(1)).min().orElseThrow();
        assertTrue(overlayBegins > sleeveEnds + 5, sleeveEnds + " and " + overlayBegins);
        assertTrue(svg.contains(">Sleeve<") && svg.contains(">Overlay<"), svg);
    }

    @Test
    void aSpecTableHasNoLines() throws Exception {
        CheckedGrade grade = new CheckedGrade(
                List.of(new CheckedSize("40", Map.of(CheckedMeasure.BICEP, 360.0))), 0, Optional.empty());
        String words = parsed(NestPicture.write("Gown", grade, Unit.INCH, Language.ENGLISH))
                .getDocumentElement()
                .getTextContent();
        assertTrue(words.contains("a spec table has figures only"), words);
    }

    @Test
    void sameGradeGivesTheSameText() {
        CheckedGrade grade = CheckedGrade.of(org.capwright.check.ChoirGown.run());
        assertEquals(
                NestPicture.write("Gown", grade, Unit.MILLIMETRE, Language.ENGLISH),
                NestPicture.write("Gown", grade, Unit.MILLIMETRE, Language.ENGLISH));
    }
}
