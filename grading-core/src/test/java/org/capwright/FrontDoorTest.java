package org.capwright;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.capwright.check.Finding;
import org.capwright.grade.PointOfMeasure;
import org.capwright.grade.Sizes;
import org.capwright.lay.Fabric;
import org.capwright.lay.Materials;
import org.capwright.lay.Trimming;
import org.capwright.measure.Dimension;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.tables.SizeTables;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;

/** The library as a user has it: from named steps to files. */
class FrontDoorTest {

    private static final Sizes SIZES = Sizes.withBase("40", "36", "38", "40", "42");

    private static final StructuredSleeve GOWN = gown(Unit.CENTIMETRE, 1);

    /** The same gown in any unit. */
    private static StructuredSleeve gown(Unit unit, double one) {
        return StructuredSleeve.named("Choir gown sleeve", unit)
                .sleeve(sleeve -> sleeve.bicep(36 / one)
                        .length(60 / one)
                        .capHeight(13.5 / one)
                        .capOutward(1.9 / one)
                        .capInward(1.2 / one)
                        .armhole(45 / one))
                .overlay(overlay -> overlay.rise(14 / one)
                        .length(34 / one)
                        .frontGap(6 / one)
                        .backGap(6 / one)
                        .pleats(pleats -> pleats.count(8).knifeTowardApex()))
                .underSleeve(under -> under.elbow(30 / one).wrist(22 / one));
    }

    private static GradeRules rules() {
        return GradeRules.in(Unit.CENTIMETRE)
                .grow(Dimension.BICEP, 1.3)
                .grow(Dimension.CAP_HEIGHT, 0.4)
                .grow(Dimension.ARMHOLE, 1.4, 1.5, 1.6);
    }

    private static Pieces pieces() {
        return GOWN.grade(rules(), SIZES).pieces();
    }

    private static double value(StructuredSleeve style, String code) {
        return row(style.grade(GradeRules.in(Unit.MILLIMETRE), Sizes.withBase("40", "40")), code)
                .values()
                .get(0);
    }

    private static PointOfMeasure row(SizeRun run, String code) {
        return run.specTable().rows().stream()
                .filter(row -> row.code().equals(code))
                .findFirst()
                .orElseThrow();
    }

    private static byte[] written(Pieces pieces, FileFormat format) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        pieces.write(format, out);
        return out.toByteArray();
    }

    @Test
    void dimensionsAndJumpsAreThoseGiven() {
        SizeRun run = GOWN.grade(rules(), SIZES);
        PointOfMeasure bicep = row(run, "bicep");
        for (int i = 0; i < 4; i++) {
            assertEquals(360 + 13 * (i - 2), bicep.values().get(i), 1e-6);
        }
        List<Double> armhole = row(run, "armhole").values();
        assertEquals(450 - 15 - 14, armhole.get(0), 1e-6);
        assertEquals(450 + 16, armhole.get(3), 1e-6);
        assertEquals(600, row(run, "length").values().get(0), 1e-6);
        assertEquals(220, row(run, "wrist").values().get(3), 1e-6);
    }

    /** Words for people are said in the language of the style; what programs read is the same. The PDF is read back by PDFBox. */
    @Test
    void theLanguageOfTheStyleIsThatOfItsSheets() throws IOException {
        Language french = Language.find("fr").orElseThrow();
        Pieces pieces =
                GOWN.language(french).revision("2").grade(rules(), SIZES).pieces();
        assertArrayEquals(
                written(GOWN.revision("2").grade(rules(), SIZES).pieces(), FileFormat.DXF_NEST),
                written(pieces, FileFormat.DXF_NEST));
        try (PDDocument document = Loader.loadPDF(written(pieces, FileFormat.PDF))) {
            assertEquals("fr", document.getDocumentCatalog().getLanguage());
            String text = new PDFTextStripper().getText(document);
            for (String words :
                    List.of("Révision 2", "Ordre de montage", "Hauteur de tête", "Bâtissez", "couper 2 au pli")) {
                assertTrue(text.contains(words), words);
            }
            assertFalse(text.contains("Cutting list") || text.contains("Cap height"), text);
        }
        Finding finding = pieces.check(SizeTables.find("women-en-13402-3-bust").orElseThrow())
                .get(0);
        assertFalse(finding.text(Unit.CENTIMETRE).equals(finding.text(Unit.CENTIMETRE, french)));
    }

    /** 25.4 mm to the inch: ISO 31-1. */
    @Test
    void theUnitOfTheStyleIsTheUnitOfEveryStep() {
        StructuredSleeve inInches = gown(Unit.INCH, 2.54);
        for (String code : List.of("bicep", "capLine", "wrist", "overlayEdge", "pleatDepth", "attachSpan")) {
            assertEquals(value(GOWN, code), value(inInches, code), 1e-6, code);
        }
    }

    @Test
    void capEaseAskedForIsCapEaseDrafted() {
        StructuredSleeve plain = StructuredSleeve.named("Plain", Unit.CENTIMETRE);
        assertEquals(0.04 * 450, value(plain.sleeve(s -> s.bicep(36).armhole(45).capEaseShare(0.04)), "capEase"), 1e-6);
        assertEquals(12, value(plain.sleeve(s -> s.capHeight(13.5).armhole(45).capEase(1.2)), "capEase"), 1e-6);
        assertEquals(
                0.03 * 225 + 0.05 * 225,
                value(plain.sleeve(s -> s.bicep(36).armhole(45).capEaseShares(0.03, 0.05)), "capEase"),
                1e-6);
    }

    @Test
    void theRiseFollowsFromTheFullnessOrThePleats() {
        StructuredSleeve base = StructuredSleeve.named("Gown", Unit.CENTIMETRE)
                .sleeve(s -> s.bicep(36).capHeight(13.5).armhole(45));
        StructuredSleeve full =
                base.overlay(o -> o.fullness(1.5).length(34).frontGap(6).backGap(6));
        assertEquals(1.5, value(full, "overlayEdge") / value(full, "attachSpan"), 1e-8);
        StructuredSleeve pleated = base.overlay(o -> o.length(34)
                .frontGap(6)
                .backGap(6)
                .pleats(p -> p.count(6).depth(1.5).knifeTowardFront()));
        assertEquals(6 * 2 * 15, value(pleated, "pleatTakeUp"), 1e-6);
    }

    @Test
    void whatContradictsItselfIsRefusedWhereItIsGiven() {
        StructuredSleeve plain = StructuredSleeve.named("Plain", Unit.CENTIMETRE);
        assertThrows(
                InvalidMeasuresException.class,
                () -> plain.sleeve(s -> s.bicep(36).capHeight(13.5).armhole(45).capEase(1)));
        assertThrows(
                InvalidMeasuresException.class,
                () -> GOWN.overlay(o -> o.rise(14).pleats(p -> p.count(8).depth(2))));
        assertThrows(InvalidMeasuresException.class, () -> GOWN.overlay(o -> o.pleats(p -> p.box())));
        assertThrows(InvalidMeasuresException.class, () -> plain.sleeve(s -> s.bicep(Double.NaN)));
        assertThrows(InvalidMeasuresException.class, () -> plain.sleeve(s -> s.capEaseShare(4)));
        assertThrows(InvalidMeasuresException.class, () -> rules().grow(Dimension.BICEP, 1));
    }

    @Test
    void everythingThatIsMissingIsNamedAtOnce() {
        StructuredSleeve bare =
                StructuredSleeve.named("Bare", Unit.CENTIMETRE).overlay(o -> o).underSleeve(u -> u);
        InvalidMeasuresException e = assertThrows(
                InvalidMeasuresException.class,
                () -> bare.grade(GradeRules.in(Unit.CENTIMETRE), Sizes.withBase("40", "40")));
        // Bicep, cap height, armhole; rise, length and both gaps of the overlay; length and wrist of the under-sleeve.
        assertEquals(9, e.violations().size(), e.getMessage());
    }

    @Test
    void stepsLeaveTheStyleTheyStartFromAsItWas() {
        double before = value(GOWN, "bicep");
        GOWN.sleeve(sleeve -> sleeve.bicep(40));
        assertEquals(before, value(GOWN, "bicep"));
    }

    @Test
    void everyFormatIsWrittenTheSameTwiceAndFromTwoThreads() throws Exception {
        Pieces pieces = pieces();
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            for (FileFormat format : FileFormat.values()) {
                Callable<byte[]> write = () -> written(pieces, format);
                List<Future<byte[]>> both = threads.invokeAll(List.of(write, write));
                byte[] first = both.get(0).get();
                assertTrue(first.length > 500, format.name());
                assertArrayEquals(first, both.get(1).get(), format.name());
            }
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void pagesAreCountedAsTheyArePrinted() throws IOException {
        Pieces pieces = pieces().printedIn(List.of("40"));
        try (PDDocument document = Loader.loadPDF(written(pieces, FileFormat.PDF))) {
            assertEquals(pieces.pages(), document.getNumberOfPages());
            assertEquals(pieces.writePdf(OutputStream.nullOutputStream()), document.getNumberOfPages());
        }
    }

    @Test
    void theArchiveHoldsAFileThatIsAddedAndTheLays() throws IOException {
        Pieces pieces = pieces();
        Pieces bought = pieces.withMaterials(pieces.buy(
                List.of(Fabric.main(1400), Fabric.lining(1400), Fabric.interfacing(900)),
                Trimming.USUAL,
                Map.of("38", 2)));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        bought.writeZip(out, new NamedFile("txt", "A note.", new byte[] {'a'}));
        List<String> names = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(out.toByteArray()))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                names.add(entry.getName());
            }
        }
        assertEquals("choir-gown-sleeve-rev-1-size-run.txt", names.get(0));
        assertEquals(3, names.stream().filter(name -> name.contains("-lay-")).count());
        assertTrue(names.contains("SHA256SUMS"));
    }

    @Test
    void clothIsReckonedByNamedSteps() {
        Materials plain = pieces().buy(List.of(Fabric.main(1400)));
        Materials shrinking =
                pieces().buy(List.of(Fabric.main(1400).withShrinkage(0.1, 0).withWaste(0.05)));
        assertEquals(4, plain.cloths().size());
        // Lay length x 1 / (1 - 0.1) x 1.05.
        assertEquals(
                plain.cloths().get(0).lay().length() / 0.9 * 1.05,
                shrinking.cloths().get(0).lay().purchase().exactLength(),
                1e-6);
        assertEquals(
                new Fabric(
                        org.capwright.pattern.Material.MAIN,
                        1400,
                        Fabric.Laying.OPEN,
                        Fabric.Nap.WITH,
                        0.01,
                        0.02,
                        0.03,
                        8,
                        4,
                        114.3),
                Fabric.main(1400)
                        .open()
                        .withNap(Fabric.Nap.WITH)
                        .withShrinkage(0.01, 0.02)
                        .withWaste(0.03)
                        .withSelvedge(8)
                        .withGap(4)
                        .soldBy(114.3));
    }

    @Test
    void aTableOfBodiesFindsMoreThanNone() {
        StructuredSleeve style = GOWN;
        GradeRules still = GradeRules.in(Unit.CENTIMETRE).grow(Dimension.ARMHOLE, 0.1);
        Pieces pieces = style.grade(still, SIZES).pieces();
        assertFalse(pieces.check().stream().anyMatch(finding -> finding.code().equals("body-jump")));
        assertTrue(pieces.check(SizeTables.find("women-en-13402-3-bust").orElseThrow()).stream()
                .anyMatch(finding -> finding.code().equals("body-jump")));
    }
}
