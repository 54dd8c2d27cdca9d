package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.Finding;
import org.capwright.check.GradeChecks;
import org.capwright.check.Thresholds;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.quantity.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The spec table of a choir gown's sleeve, sizes 36 to 40, as different rooms would write it. Invented figures. */
class SpecTableReaderTest {

    private static List<Arguments> ways() {
        return List.of(
                way("commas, unit in a heading", """
                    Choir gown
                    Point of measure (cm),Tol +/-,36,38,40
                    Bicep,1,34.8,36,37.2
                    Sleeve length,1,59.5,60,60.5
                    Cap height,0.5,13.1,13.5,13.9
                    """),
                way("semicolons, decimal commas, unit column", """
                    Maß;Einheit;36;38;40
                    Oberarmweite;cm;34,8;36;37,2
                    Ärmellänge;cm;59,5;60;60,5
                    Kugelhöhe;mm;131;135;139
                    """),
                way("tabs and a unit row", """
                    POM	36	38	40
                    	cm	cm	cm
                    UPPER ARM WIDTH	34.8	36	37.2
                    SLEEVE LENGTH	59.5	60	60.5
                    CAP HEIGHT	13.1	13.5	13.9
                    """),
                way("units in the names", """
                    Name,Size 36,Size 38,Size 40
                    Bicep (mm),348,360,372
                    Sleeve length [cm],59.5,60,60.5
                    "Cap height, mm",131,135,139
                    """),
                way("units in the cells, half of the bicep", """
                    Name,36,38*,40
                    1/2 Bicep,17.4 cm,18 cm,18.6 cm
                    Sleeve length,595mm,600mm,605mm
                    Crown height,13.1 cm,13.5 cm,13.9 cm
                    """),
                way("one value to a line", """
                    style;size;point of measure;value;unit
                    gown;40;bicep;37,2;cm
                    gown;40;length;60,5;cm
                    gown;40;cap height;13,9;cm
                    gown;36;bicep;34,8;cm
                    gown;36;length;59,5;cm
                    gown;36;cap height;13,1;cm
                    gown;38;bicep;36;cm
                    gown;38;length;60;cm
                    gown;38;cap height;13,5;cm
                    """),
                way("sizes downward", """
                    All measurements in cm
                    Size,Bicep,Sleeve length,Cap height,Remarks
                    36,34.8,59.5,13.1,
                    38 (base),36,60,13.5,tried on
                    40,37.2,60.5,13.9,
                    """),
                way("sizes downward with totals", """
                    Size,Bicep (cm),Sleeve length (cm),Cap height (cm)
                    36,34.8,59.5,13.1
                    38 (base),36,60,13.5
                    40,37.2,60.5,13.9
                    Total,108,180,40.5
                    Average,36,60,13.5
                    """),
                way("bars, a country over every size, names of the sizes elsewhere", """
                    in cm
                    |EU|EU|EU
                    UK|8|10|12
                    EU|36|38|40
                    Bicep|34.8|36|37.2
                    Sleeve length|59.5|60|60.5
                    Cap height|13.1|13.5|13.9
                    Shrinkage %|2|2|2
                    Base size: 38
                    """),
                way("sizes downward with a unit row", """
                    Size,Bicep,Sleeve length,Cap height
                    ,cm,cm,mm
                    36,34.8,59.5,131
                    38,36,60,135
                    40,37.2,60.5,139
                    """),
                way("largest first, jumps between, a stated unit", """
                    Unit:,cm
                    Base size: 38
                    Code,Point,40,38,36,Grade
                    A,Biceps,37.2,36,34.8,1.2
                    B,Overarm length,60.5,60,59.5,0.5
                    C,Sleeve cap height,13.9,13.5,13.1,0.4
                    D,Button stand,2,2,2,0
                    """));
    }

    private static Arguments way(String name, String text) {
        return Arguments.of(name, text);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("ways")
    void isRead(String name, String text) throws ForeignInputException {
        for (byte[] bytes : List.of(
                text.getBytes(StandardCharsets.UTF_8),
                ("\ufeff" + text).getBytes(StandardCharsets.UTF_8),
                text.replace("\n", "\r\n").getBytes(Charset.forName("windows-1252")),
                ("\ufeff" + text).getBytes(StandardCharsets.UTF_16LE))) {
            ForeignGrade read = SpecTableReader.read(ForeignFile.of("spec.csv", bytes), ForeignOptions.none());
            check(read);
        }
    }

    private static void check(ForeignGrade read) {
        CheckedGrade grade = read.grade();
        assertEquals(
                List.of("36", "38", "40"),
                grade.sizes().stream().map(s -> s.label()).toList());
        assertEquals(1, grade.base());
        double[][] meant = {{348, 595, 131}, {360, 600, 135}, {372, 605, 139}};
        for (int i = 0; i < 3; i++) {
            assertEquals(
                    meant[i][0],
                    value(grade, i, CheckedMeasure.BICEP),
                    1e-9,
                    () -> read.traces().toString());
            assertEquals(
                    meant[i][1],
                    value(grade, i, CheckedMeasure.LENGTH),
                    1e-9,
                    () -> read.traces().toString());
            assertEquals(
                    meant[i][2],
                    value(grade, i, CheckedMeasure.CAP_HEIGHT),
                    1e-9,
                    () -> read.traces().toString());
        }
        for (CheckedMeasure measure : List.of(CheckedMeasure.BICEP, CheckedMeasure.LENGTH, CheckedMeasure.CAP_HEIGHT)) {
            assertTrue(
                    read.traces().stream()
                            .anyMatch(t -> t.subject().equals(measure.code())
                                    && t.kind() == ImportNote.Kind.FOUND
                                    && t.line() > 0),
                    () -> measure + " " + read.traces());
        }
    }

    private static double value(CheckedGrade grade, int size, CheckedMeasure measure) {
        return grade.value(size, measure).orElse(Double.NaN);
    }

    @Test
    void fractionsOfAnInch() throws ForeignInputException {
        ForeignGrade read = read("""
            Point (in),S,M,L,XL
            Bicep,13 3/4,14 1/4,14-3/4,15¼"
            Wrist,7⅞,8,8 1/8,8.25
            Cap ease,1/2,1/2,5/8,+3/4
            """, ForeignOptions.none());
        assertEquals(
                List.of("S", "M", "L", "XL"),
                read.grade().sizes().stream().map(s -> s.label()).toList());
        assertEquals(13.75 * 25.4, value(read.grade(), 0, CheckedMeasure.BICEP), 1e-9);
        assertEquals(14.75 * 25.4, value(read.grade(), 2, CheckedMeasure.BICEP), 1e-9);
        assertEquals(15.25 * 25.4, value(read.grade(), 3, CheckedMeasure.BICEP), 1e-9);
        assertEquals(7.875 * 25.4, value(read.grade(), 0, CheckedMeasure.WRIST), 1e-9);
        assertEquals(0.75 * 25.4, value(read.grade(), 3, CheckedMeasure.CAP_EASE), 1e-9);
    }

    @Test
    void gapsStayGapsAndUnknownPointsAreTold() throws ForeignInputException {
        ForeignGrade read = read("""
            Name,36,38,40
            Bicep,34.8,-,37.2
            Collar stand,3,3,3
            Upper arm,1,2,3
            """, ForeignOptions.in(Unit.CENTIMETRE));
        assertTrue(read.grade().value(1, CheckedMeasure.BICEP).isEmpty());
        assertEquals(372, value(read.grade(), 2, CheckedMeasure.BICEP), 1e-9);
        assertTrue(read.traces().stream()
                .anyMatch(t -> t.kind() == ImportNote.Kind.NOT_READ
                        && t.line() == 3
                        && t.words().toString().contains("Collar stand")));
        assertTrue(read.traces().stream()
                .anyMatch(t -> t.kind() == ImportNote.Kind.NOT_READ
                        && t.line() == 4
                        && t.words().toString().contains("line 2")));
        assertTrue(read.traces().stream()
                .anyMatch(t -> t.kind() == ImportNote.Kind.ASSUMED
                        && t.words().toString().contains("base size")));
    }

    /** Bicep, length, cap height, armhole, elbow, wrist as sewing rooms of ten countries write them; common practice, no source, from memory. */
    @Test
    void readsThePointsOfMeasureOfTenLanguages() throws ForeignInputException {
        for (String names : List.of(
                "Bicep;Sleeve length;Cap height;Armhole;Elbow;Sleeve opening",
                "Tour de bras;Longueur de manche;Hauteur de tête;Emmanchure;Tour de coude;Bas de manche",
                "Oberarmweite;Ärmellänge;Kugelhöhe;Armloch;Ellenbogenweite;Saumweite",
                "Contorno de brazo;Largo de manga;Altura de copa;Sisa;Contorno de codo;Bocamanga",
                "Giro braccio;Lunghezza manica;Altezza colmo;Giromanica;Giro gomito;Fondo manica",
                "Contorno do braço;Comprimento da manga;Altura da copa;Cava;Cotovelo;Punho",
                "Bovenarmwijdte;Mouwlengte;Kophoogte;Armsgat;Elleboogwijdte;Polswijdte",
                "Obwód ramienia;Długość rękawa;Wysokość główki rękawa;Podkrój pachy;Obwód łokcia;Obwód nadgarstka",
                "Pazı genişliği;Kol boyu;Kol kafası yüksekliği;Kol evi;Dirsek genişliği;Bilek genişliği",
                "袖幅;袖丈;袖山の高さ;アームホール;肘幅;袖口幅")) {
            String[] words = names.split(";");
            StringBuilder sheet = new StringBuilder("Point (cm);36;38;40\n");
            for (int i = 0; i < words.length; i++) {
                int middle = new int[] {36, 60, 14, 45, 28, 19}[i];
                sheet.append(words[i].toUpperCase(java.util.Locale.ROOT) + ";" + (middle - 1) + ";" + middle + ";"
                        + (middle + 1) + "\n");
            }
            ForeignGrade read = read(sheet.toString(), ForeignOptions.none());
            List<CheckedMeasure> measures = List.of(
                    CheckedMeasure.BICEP,
                    CheckedMeasure.LENGTH,
                    CheckedMeasure.CAP_HEIGHT,
                    CheckedMeasure.ARMHOLE,
                    CheckedMeasure.ELBOW,
                    CheckedMeasure.WRIST);
            for (int i = 0; i < measures.size(); i++) {
                assertEquals(
                        10 * new int[] {36, 60, 14, 45, 28, 19}[i],
                        value(read.grade(), 1, measures.get(i)),
                        1e-9,
                        words[i] + " " + read.traces());
            }
            assertEquals(List.of(), Unread.of(read), names);
        }
    }

    @Test
    void aRowThatIsNotKnownIsAFinding() throws ForeignInputException {
        ForeignGrade read = read("""
            Point (cm);EU 36;EU 38;EU 40
            Armloch;43,4;45;46,6
            Weite am Bauch der Maus;34,8;36;37,2
            Noch eine;59,5;60;60,5
            """, ForeignOptions.none());
        assertEquals(450, value(read.grade(), 1, CheckedMeasure.ARMHOLE), 1e-9);
        assertEquals(2, Unread.of(read).size());
        assertTrue(Unread.of(read).get(0).message().toString().contains("line 3"));
    }

    @Test
    void sizesOfManyKindsComeInTheirOrder() throws ForeignInputException {
        for (String sizes : List.of(
                "UK 8;UK 10;UK 12",
                "XS;S;3XL",
                "2XS;XS;M",
                "Gr. 36;Gr. 38;Gr. 40",
                "36/38;40/42;44/46",
                "EU 36;EU 38;EU 40")) {
            String[] labels = sizes.split(";");
            ForeignGrade read = read(
                    "Point (cm);" + labels[2] + ";" + labels[0] + ";" + labels[1] + "\nBicep;37.2;34.8;36\n",
                    ForeignOptions.none());
            assertEquals(348, value(read.grade(), 0, CheckedMeasure.BICEP), 1e-9, sizes + read.grade());
            assertEquals(372, value(read.grade(), 2, CheckedMeasure.BICEP), 1e-9, sizes + read.grade());
        }
    }

    @Test
    void readsStepsBesideAFullSize() throws ForeignInputException {
        for (String steps : List.of(
                "Bicep;-1.2;-1.2;36;+1.2;+1.2\nCap height;-.4;-.4;13.5;+.4;+.4\n",
                "Bicep;-2.4;-1.2;36;1.2;2.4\nCap height;-0.8;-0.4;13.5;0.4;0.8\n",
                "Bicep;1.2;1.2;36;1.2;1.2\nCap height;0.4;0.4;13.5;0.4;0.4\n")) {
            ForeignGrade read = read(
                    "Point (cm);34;36;38;40;42\n" + steps.replace("-.4", "-0.4").replace("+.4", "+0.4"),
                    ForeignOptions.none());
            double[] bicep = {336, 348, 360, 372, 384};
            for (int i = 0; i < bicep.length; i++) {
                assertEquals(bicep[i], value(read.grade(), i, CheckedMeasure.BICEP), 1e-9, steps);
                assertEquals(127 + 4 * i, value(read.grade(), i, CheckedMeasure.CAP_HEIGHT), 1e-9, steps);
            }
            assertEquals(2, read.grade().base());
            assertTrue(read.traces().stream().anyMatch(t -> t.words().toString().contains("increments")));
        }
        ForeignInputException e = assertThrows(
                ForeignInputException.class, () -> read("Point (cm);36;38\nBicep;-1.2;-1.2\n", ForeignOptions.none()));
        assertTrue(e.reason().toString().contains("bicep of size 36"), e.getMessage());
    }

    @Test
    void thousandsAndDecimals() throws ForeignInputException {
        assertEquals(
                1234.5,
                value(
                        read("Name (mm);36\nSleeve length;1.234,5\n", ForeignOptions.none())
                                .grade(),
                        0,
                        CheckedMeasure.LENGTH),
                1e-9);
        assertEquals(
                1234.5,
                value(
                        read("Name (mm)\t36\t38\nSleeve length\t1,234.5\t1,200\n", ForeignOptions.none())
                                .grade(),
                        0,
                        CheckedMeasure.LENGTH),
                1e-9);
        assertEquals(
                36.125 * 10,
                value(
                        read("Name (cm);36;38\nBicep;36,125;37,1\n", ForeignOptions.none())
                                .grade(),
                        0,
                        CheckedMeasure.BICEP),
                1e-9);
    }

    @Test
    void aUnitMistakeIsFoundByTheChecks() throws ForeignInputException {
        ForeignGrade read = read("""
            Name (cm),36,38,40,42
            Bicep,34.8,36,14.6,38.4
            """, ForeignOptions.none());
        List<Finding> found = GradeChecks.run(read.grade(), Thresholds.usual());
        assertTrue(
                found.stream()
                        .anyMatch(f ->
                                f.code().equals("unit-mistake") && f.sizes().equals(List.of("40"))),
                found::toString);
    }

    /** The unit, as a line above the table says it in passing. Wordings from memory: common practice, no source. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "All measurements in cm, sleeve laid flat | 36 | 360",
                "Measurements are in inches (fractions of 1/8) | 14 | 355.6",
                "Ma\u00dfe in cm; Toleranz siehe unten | 36 | 360",
                "Toutes les mesures en cm, \u00e0 plat | 36 | 360",
                "Medidas en mm salvo indicaci\u00f3n | 360 | 360",
                "All measures in | 14 | 355.6",
            })
    void theUnitIsStatedInPassing(String line, String bicep, double meant) throws ForeignInputException {
        String sheet = "Choir gown\t\t\n" + line + "\t\t\n\t36\t38\nBicep\t" + bicep + "\t" + bicep + "\n";
        assertEquals(meant, value(read(sheet, ForeignOptions.none()).grade(), 0, CheckedMeasure.BICEP), 1e-9);
    }

    /** 1100.5 mm in five ways of writing thousands, and 1100 mm where the sign could be a decimal one and no overlay is 1.1 mm long. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,100.5 | 1100.5",
                "1.100,5 | 1100.5",
                "1 100,5 | 1100.5",
                "1\u2019100.5 | 1100.5",
                "1,100 | 1100",
                "1.100 | 1100",
                "1 100 | 1100",
            })
    void thousandsAreReadAsSuch(String written, double meant) throws ForeignInputException {
        String sheet = "Measure (mm);36;38;40\nOverlay length;" + written + ";" + written + ";" + written + "\n";
        CheckedGrade grade = read(sheet, ForeignOptions.none()).grade();
        assertEquals(meant, value(grade, 0, CheckedMeasure.OVERLAY_TOTAL_LENGTH), 1e-9);
    }

    /** Three decimals stay decimals where thousands would be those of no sleeve. */
    @Test
    void threeDecimalsStayDecimals() throws ForeignInputException {
        ForeignGrade read = read(
                "Measure (in),36,38,40\nBicep,13.125,13.625,14.125\nCap ease,1.125,1.125,1.125\n",
                ForeignOptions.none());
        assertEquals(13.125 * 25.4, value(read.grade(), 0, CheckedMeasure.BICEP), 1e-9);
        assertEquals(1.125 * 25.4, value(read.grade(), 0, CheckedMeasure.CAP_EASE), 1e-9);
    }

    /** Steps for ranges of unlike width, and a least and a greatest figure of a size, are asked about. */
    @Test
    void rangesAndBoundsAreAskedAbout() throws ForeignInputException {
        for (String sheet : List.of(
                "Measure (cm);40;36-40;40-46\nBicep;36,0;1,3;1,3\nSleeve length;60,0;0,5;0,5\n",
                "Measure (cm);36 min;36 max;38 min;38 max\nBicep;33,0;33,8;34,3;35,1\n")) {
            ForeignGrade read = read(sheet, ForeignOptions.none());
            assertEquals(1, read.questions().size(), sheet);
        }
    }

    /** A figure with its tolerance, a mark, a word for about, or the same length in a second unit behind it (common practice, no source). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "34.8 \u00b10.5,36 \u00b1 0.5,37.2 +/- 0.5",
                "34.8*,36**,37.2 \u2020",
                "34.8 [1],36 [12],37.2",
                "~34.8,ca. 36,approx 37.2",
                "34.8 cm / 13 11/16 in,36.0 cm (14 1/8\u2033),37.2 cm | 14 5/8 in"
            })
    void whatStandsBehindAFigureIsNoPartOfIt(String cells) throws ForeignInputException {
        ForeignGrade read = read("Name (cm),36,38,40\nBicep," + cells + "\nWrist,21,22,23\n", ForeignOptions.none());
        for (int i = 0; i < 3; i++) {
            assertEquals(348 + 12 * i, value(read.grade(), i, CheckedMeasure.BICEP), 1e-9, cells);
        }
        ForeignInputException e = assertThrows(
                ForeignInputException.class,
                () -> read("Name (cm),36,38\nBicep,34.8 cm / 15 in,36\n", ForeignOptions.none()));
        assertTrue(e.reason().toString().contains("34.8 cm / 15 in"), e.getMessage());
    }

    /** What was measured on something sewn stands beside what is asked for; the zeros of the base size stand beside its figures. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Name (cm),36 spec,36 actual,38 spec,38 actual,40 spec,40 actual\nBicep,34.8,35,36,36.4,37.2,37\n",
                "Name (cm),36,36 actual,38,38 actual,40,40 actual\nBicep,34.8,35,36,36.4,37.2,37\n",
                "Name,36 cm,38 cm,40 cm,36 in,38 in,40 in\nBicep,34.8,36,37.2,13 3/4,14 1/8,14 5/8\n",
                "Name,36,38,40,36,38,40\n,cm,cm,cm,in,in,in\nBicep,34.8,36,37.2,13 3/4,14 1/8,14 5/8\n",
                "Name (cm),Base 38,36,38,40\nBicep,36,-1.2,0,1.2\nWrist,22,-0.5,0,0.5\n",
                "Name (cm)   36     38    40\nBicep      34.8   36   37.2\nSleeve opening  21   22  23\n",
            })
    void oneColumnOfASizeIsRead(String sheet) throws ForeignInputException {
        ForeignGrade read = read(sheet, ForeignOptions.none());
        assertEquals(
                List.of("36", "38", "40"),
                read.grade().sizes().stream().map(s -> s.label()).toList());
        for (int i = 0; i < 3; i++) {
            assertEquals(348 + 12 * i, value(read.grade(), i, CheckedMeasure.BICEP), 1e-9, sheet);
        }
        assertEquals(List.of(), Unread.of(read));
    }

    /** The base size is marked behind a word for size as well. */
    @ParameterizedTest
    @ValueSource(
            strings = {"Size 38*", "Size 38 base", "Size 38 (sample)", "EU 38 (base)", "Gr. 38*", "Taille 38 (base)"})
    void aMarkedSizeIsASize(String heading) throws ForeignInputException {
        String sheet = "Name (cm)," + heading.replace("38", "36").replaceAll("(?<=36).*", "") + "," + heading + ","
                + heading.replace("38", "40").replaceAll("(?<=40).*", "") + "\nBicep,34.8,36,37.2\n";
        ForeignGrade read = read(sheet, ForeignOptions.none());
        assertEquals(3, read.grade().sizes().size(), sheet);
        assertEquals(360, value(read.grade(), 1, CheckedMeasure.BICEP), 1e-9, sheet);
        assertEquals(1, read.grade().base(), sheet);
    }

    /** Lengths of the garment, or of one part of the armhole, are not those of the sleeve. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Longueur dos",
                "Largo total",
                "Lunghezza totale",
                "Gesamtl\u00e4nge",
                "Total length",
                "Emmanchure dos",
                "Largeur dos"
            })
    void whatIsOfTheGarmentIsNotRead(String name) throws ForeignInputException {
        ForeignGrade read =
                read("Name (cm),36,38,40\nBicep,34.8,36,37.2\n" + name + ",66,67,68\n", ForeignOptions.none());
        assertEquals(1, read.unread().size(), name);
    }

    @Test
    void aFractionMayHaveASign() throws ForeignInputException {
        ForeignGrade read = read("Name (in),36,38,40\nBicep,-\u00bd,14\u00bc,+\u00bd\n", ForeignOptions.none());
        assertEquals(13.75 * 25.4, value(read.grade(), 0, CheckedMeasure.BICEP), 1e-9);
    }

    /** A length below the word body is that of the body, an opening below the word sleeve that of the sleeve. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "BODY\n"
                        + "Length,66,67,68\n"
                        + "Hem,98,100,102\n"
                        + "SLEEVE\n"
                        + "Length,59.5,60,60.5\n"
                        + "Bicep,34.8,36,37.2\n"
                        + "Opening,21,22,23\n",
                "RUMPF\n"
                        + "L\u00e4nge,66,67,68\n"
                        + "\u00c4RMEL\n"
                        + "L\u00e4nge,59.5,60,60.5\n"
                        + "Oberarmweite,34.8,36,37.2\n"
                        + "Saum,21,22,23\n",
                "DOS\nLongueur,66,67,68\nMANCHE\nLongueur,59.5,60,60.5\nTour de bras,34.8,36,37.2\nBas,21,22,23\n"
            })
    void rowsBelowAHeadingAreOfWhatItSays(String sheet) throws ForeignInputException {
        ForeignGrade read = read("Name (cm),36,38,40\n" + sheet, ForeignOptions.none());
        assertEquals(600, value(read.grade(), 1, CheckedMeasure.LENGTH), 1e-9);
        assertEquals(360, value(read.grade(), 1, CheckedMeasure.BICEP), 1e-9);
        assertEquals(220, value(read.grade(), 1, CheckedMeasure.WRIST), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(strings = {"A. Bicep", "B) Bicep", "3 - Bicep", "12. Bicep", "S1 Bicep", "A-2: 1/2 Bicep"})
    void numbersBeforeANameAreNoPartOfIt(String name) throws ForeignInputException {
        ForeignGrade read =
                read("=\"Name (cm)\",=\"36\",=\"38\",=\"40\"\n" + name + ",34.8,36,37.2\n", ForeignOptions.none());
        assertEquals("36", read.grade().sizes().get(0).label());
        assertEquals(name.contains("1/2") ? 696 : 348, value(read.grade(), 0, CheckedMeasure.BICEP), 1e-9);
    }

    /** One row in another unit than the sheet says: that row is asked about and no other, and read right with the unit that is answered. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "length | Sleeve length,23.425,23.622,23.819 | in",
                "capHeight | Cap height,5.157,5.315,5.472 | in",
                "bicep | Bicep,13.701,14.173,14.646 | in",
                "length | Sleeve length,595,600,605 | mm",
                "bicep | Bicep,348,360,372 | mm",
                "capHeight | Cap height,131,135,139 | mm",
                "armhole | Armhole,435,450,465 | mm"
            })
    void oneRowInAnotherUnitIsAskedAbout(String code, String other, String unit) throws ForeignInputException {
        CheckedMeasure asked = CheckedMeasure.ofCode(code).orElseThrow();
        String sheet = "Name (cm),36,38,40\nBicep,34.8,36,37.2\nSleeve length,59.5,60,60.5\nCap height,13.1,13.5,13.9\n"
                + "Armhole,43.5,45,46.5\nSleeve hem,21,22,23\n";
        assertEquals(List.of(), read(sheet, ForeignOptions.none()).questions());
        String name = other.substring(0, other.indexOf(','));
        String mixed = sheet.replaceAll("\n" + name + ",.*", "\n" + other);
        ForeignGrade read = read(mixed, ForeignOptions.none());
        assertEquals(
                List.of(asked),
                read.questions().stream().map(OpenQuestion::subject).toList());
        assertTrue(read.questions().get(0).answers().toString().contains("(" + unit + ")"));
        ForeignGrade said = read(
                mixed, new ForeignOptions(Optional.empty(), Optional.empty(), Map.of(name, code + " (" + unit + ")")));
        assertEquals(List.of(), said.questions());
        assertEquals(value(read(sheet, ForeignOptions.none()).grade(), 1, asked), value(said.grade(), 1, asked), 0.02);
    }

    @Test
    void severalFiguresOfASizeAreAskedAbout() throws ForeignInputException {
        ForeignGrade read = read(
                "Name (cm),36 before wash,36 after wash,38 before wash,38 after wash\nBicep,34.8,34,36,35\n",
                ForeignOptions.none());
        assertEquals(1, read.questions().size());
        assertTrue(read.questions().get(0).words().toString().contains("36 before wash"));
    }

    /** Blanks between the columns of a text show no empty cell, so a line that has one is refused. */
    @Test
    void aGapBetweenBlanksIsNotGuessed() {
        ForeignInputException e = assertThrows(
                ForeignInputException.class,
                () -> read("Name (cm)  36  38  40\nBicep  34.8  36  37.2\nWrist  21  23\n", ForeignOptions.none()));
        assertEquals(3, e.line());
    }

    /** A cap line goes over the bicep line from end to end: what is shorter is a half, or the height of the cap under a name that both have. */
    @Test
    void aCapLineIsLongerThanTheBicep() throws ForeignInputException {
        String sheet = "Medidas (cm),36,38,40\nContorno de brazo,34.8,36,37.2\nCopa de manga,13.1,13.5,13.9\n";
        ForeignGrade asked = read(sheet, ForeignOptions.none());
        assertEquals(CheckedMeasure.CAP_LINE, asked.questions().get(0).subject());
        assertTrue(
                asked.questions().get(0).answers().toString().contains("capHeight"),
                asked.questions().toString());
        ForeignGrade said = read(
                sheet, new ForeignOptions(Optional.empty(), Optional.empty(), Map.of("Copa de manga", "capHeight")));
        assertEquals(List.of(), Unread.of(said));
        assertEquals(131, value(said.grade(), 0, CheckedMeasure.CAP_HEIGHT), 1e-9);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Bicep [1]",
                "Bicep\u00b2",
                "Bicep*",
                "Bicep - full",
                "Circonferenza bicipite",
                "SL width at armpit"
            })
    void notesBehindANameAreNoPartOfIt(String name) throws ForeignInputException {
        ForeignGrade read = read("Name (cm),36,38,40\n" + name + ",34.8,36,37.2\n", ForeignOptions.none());
        assertEquals(348, value(read.grade(), 0, CheckedMeasure.BICEP), 1e-9);
    }

    private static List<Arguments> wrong() {
        return List.of(
                Arguments.of("Name,36,38\nBicep,34.8,36\n", 2, "no unit is stated"),
                Arguments.of("Name (cm),36,38\nBicep,34.8,thirty\n", 2, "thirty"),
                Arguments.of("Name (cm),36,38\nBicep,34.8,1/0\n", 2, "1/0"),
                Arguments.of("Name (cm),36,38\nBicep,34.8,NaN\n", 2, "NaN"),
                Arguments.of("Name (cm),36,36\nBicep,34.8,36\n", 1, "twice"),
                Arguments.of("Name (cm),36,38\n\n\nBicep,34.8,99999999\n", 4, "out of all range"),
                Arguments.of("Name (cm),36,38\nCollar,34.8,36\n", 0, "no point of measure"),
                Arguments.of("size,point,value (cm)\n36,bicep,36\n36,bicep,37\n", 3, "twice"),
                Arguments.of("Name (cm),36,38\nBicep,\"34.8,36\n", 2, "quoted"),
                Arguments.of("", 0, "no table"));
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void whatIsWrongIsSaidWithItsLine(String text, int line, String words) {
        ForeignInputException e = assertThrows(ForeignInputException.class, () -> read(text, ForeignOptions.none()));
        assertTrue(e.reason().toString().contains(words), e.getMessage());
        assertEquals(line, e.line(), e.getMessage());
    }

    @Test
    void theBaseSizeMustBeThere() throws ForeignInputException {
        String text = "Name (cm),36,38,40\nBicep,34.8,36,37.2\n";
        ForeignOptions options = new ForeignOptions(Optional.empty(), Optional.of("40"));
        assertEquals(2, read(text, options).grade().base());
        ForeignOptions wrong = new ForeignOptions(Optional.empty(), Optional.of("44"));
        ForeignInputException e = assertThrows(ForeignInputException.class, () -> read(text, wrong));
        assertTrue(
                e.reason().toString().contains("44") && e.reason().toString().contains("36, 38, 40"), e.getMessage());
    }

    @Test
    void theSenderSaysWhatARowIs() throws ForeignInputException {
        String sheet = """
            Maß (cm);36;38;40
            Zwickel;34,8;36;37,2
            Kragen;20;21;22
            Ärmellänge;59,5;60;60,5
            """;
        ForeignGrade unsaid = read(sheet, ForeignOptions.none());
        assertEquals(2, unsaid.unread().size());
        assertEquals(
                CheckedMeasure.BICEP,
                unsaid.unread().get(0).proposals().get(0).measure(),
                unsaid.unread().toString());
        assertTrue(unsaid.grade().value(0, CheckedMeasure.BICEP).isEmpty());
        ForeignGrade said = read(
                sheet,
                new ForeignOptions(
                        Optional.empty(),
                        Optional.empty(),
                        Map.of("zwickel", "bicep", "Kragen", ForeignOptions.IGNORED)));
        assertEquals(List.of(), Unread.of(said));
        assertEquals(348, value(said.grade(), 0, CheckedMeasure.BICEP), 1e-9);
    }

    /** The first rows are not known: the sizes stand above them all the same. */
    @Test
    void oneKnownRowIsNotReadTransposed() throws ForeignInputException {
        for (String sheet : List.of(
                "Maß (cm);36;38;40\nZwickel;20;21;22\nKragen;30;31;32\nArmloch;43,4;45;46,6\n",
                "Gown\n\nGröße;Zwickel;Armloch (cm)\n36;20;43,4\n38;21;45\n40;22;46,6\n",
                "Maß (cm);36;38;40\nArmloch;43,4;45;46,6\nZwickel;20;21;22\n")) {
            ForeignGrade read = read(sheet, ForeignOptions.none());
            assertEquals(
                    List.of("36", "38", "40"),
                    read.grade().sizes().stream().map(s -> s.label()).toList(),
                    sheet);
            assertEquals(450, value(read.grade(), 1, CheckedMeasure.ARMHOLE), 1e-9, sheet);
        }
        ForeignInputException e = assertThrows(
                ForeignInputException.class,
                () -> read("Armloch (cm);43,4;45;46,6\nZwickel;20;21;22\n", ForeignOptions.none()));
        assertTrue(e.reason().toString().contains("no row of sizes"), e.getMessage());
    }

    /** Half widths of 17.4 to 18.6 cm beside a sleeve of 60 cm: common practice, no source. */
    @Test
    void halvesAreAskedAboutAndNotJudged() throws ForeignInputException {
        String sheet =
                "Name (cm);36;38;40\nBicep;17.4;18;18.6\nSleeve length;59.5;60;60.5\nCap height;13.1;13.5;13.9\n";
        ForeignGrade asked = read(sheet, ForeignOptions.none());
        assertEquals(1, asked.questions().size(), asked.questions().toString());
        assertEquals(CheckedMeasure.BICEP, asked.questions().get(0).subject());
        assertTrue(
                asked.questions().get(0).words().toString().contains("17.4 to 18.6 cm"),
                asked.questions().toString());
        assertTrue(asked.grade().value(0, CheckedMeasure.BICEP).isEmpty());
        assertTrue(Unread.is(Unread.of(asked).get(0)));
        for (String meaning : List.of("half bicep", "full bicep")) {
            ForeignGrade said =
                    read(sheet, new ForeignOptions(Optional.empty(), Optional.empty(), Map.of("Bicep", meaning)));
            assertEquals(List.of(), said.questions(), meaning);
            assertEquals(meaning.startsWith("half") ? 348 : 174, value(said.grade(), 0, CheckedMeasure.BICEP), 1e-9);
        }
    }

    @Test
    void aWrongUnitIsAskedAboutAndTheSenderIsBelieved() throws ForeignInputException {
        String sheet = "Name (cm);36;38;40\n"
                + "Bicep;13.75;14.25;14.625\n"
                + "Sleeve length;23.5;23.625;23.75\n"
                + "Armhole;17;17.75;18.25\n";
        ForeignGrade asked = read(sheet, ForeignOptions.none());
        assertEquals(1, asked.questions().size(), asked.questions().toString());
        assertTrue(
                asked.questions().get(0).answers().toString().contains("fileUnits to in"),
                asked.questions().toString());
        assertTrue(asked.grade().value(0, CheckedMeasure.BICEP).isEmpty());
        ForeignGrade said = read(sheet, ForeignOptions.in(Unit.INCH));
        assertEquals(List.of(), said.questions());
        assertEquals(13.75 * 25.4, value(said.grade(), 0, CheckedMeasure.BICEP), 1e-9);
    }

    @Test
    void stepsStandInAColumnOrInSpans() throws ForeignInputException {
        for (String sheet : List.of(
                "Sizes;34;36;38;40;42\nPoint (cm);38;Grade\nBicep;36;+/- 1.2\nCap height;13.5;0.4 per size\n",
                "Point (cm);38;34-36;36-38;38-40;40-42\nBicep;36;1.2;1.2;1.2;1.2\nCap height;13.5;0.4;0.4;0.4;0.4\n")) {
            ForeignGrade read = read(sheet, ForeignOptions.none());
            assertEquals(5, read.grade().sizes().size(), sheet);
            assertEquals(2, read.grade().base(), sheet);
            for (int i = 0; i < 5; i++) {
                assertEquals(336 + 12 * i, value(read.grade(), i, CheckedMeasure.BICEP), 1e-9, sheet);
                assertEquals(127 + 4 * i, value(read.grade(), i, CheckedMeasure.CAP_HEIGHT), 1e-9, sheet);
            }
        }
        ForeignGrade unnamed = read("Point (cm);38;Grade\nBicep;36;1.2\nCap height;13.5;0.4\n", ForeignOptions.none());
        assertEquals(1, unnamed.questions().size());
    }

    @Test
    void theDeclaredCharsetIsHonoured() throws ForeignInputException {
        String sheet = "Wymiar (cm);36;38;40\nDługość rękawa;59,5;60;60,5\nObwód ramienia;34,8;36;37,2\n";
        ForeignFile file = ForeignFile.of("spec.csv", sheet.getBytes(Charset.forName("ISO-8859-2")));
        ForeignGrade read = SpecTableReader.read(file.declared(Charset.forName("ISO-8859-2")), ForeignOptions.none());
        assertEquals(595, value(read.grade(), 0, CheckedMeasure.LENGTH), 1e-9);
        for (Charset wide : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE)) {
            ForeignGrade unmarked =
                    SpecTableReader.read(ForeignFile.of("spec.csv", sheet.getBytes(wide)), ForeignOptions.none());
            assertEquals(348, value(unmarked.grade(), 0, CheckedMeasure.BICEP), 1e-9, wide.name());
        }
    }

    private static ForeignGrade read(String text, ForeignOptions options) throws ForeignInputException {
        return SpecTableReader.read(ForeignFile.of("spec.csv", text.getBytes(StandardCharsets.UTF_8)), options);
    }
}
