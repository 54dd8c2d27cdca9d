package org.capwright.json;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.capwright.FileFormat;
import org.capwright.GradeRules;
import org.capwright.Pieces;
import org.capwright.StructuredSleeve;
import org.capwright.grade.Sizes;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.measure.Dimension;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tools.jackson.databind.json.JsonMapper;

class StyleFileTest {

    /** The gown as a program makes it; its figures are those of {@code examples/choir-gown.json} without what only a request says. */
    private static final StructuredSleeve GOWN = StructuredSleeve.named("Choir gown sleeve", Unit.CENTIMETRE)
            .sleeve(sleeve -> sleeve.bicep(36)
                    .length(60)
                    .capHeight(13.5)
                    .capOutward(1.9)
                    .capInward(1.2)
                    .armhole(45))
            .overlay(overlay -> overlay.rise(14)
                    .length(34)
                    .frontGap(6)
                    .backGap(6)
                    .pleats(pleats -> pleats.count(8).knifeTowardApex()))
            .underSleeve(under -> under.elbow(30).wrist(22));

    private static final GradeRules RULES =
            GradeRules.in(Unit.CENTIMETRE).grow(Dimension.BICEP, 1.3).grow(Dimension.ARMHOLE, 1.5, 1.5, 1.6, 1.6, 1.7);

    private static final Sizes SIZES = Sizes.withBase("40", "36", "38", "40", "42", "44", "46");

    @TempDir
    Path folder;

    private static byte[] file(Pieces pieces, FileFormat format) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        pieces.write(format, out);
        return out.toByteArray();
    }

    @ParameterizedTest
    @EnumSource(
            value = FileFormat.class,
            names = {"SVG", "CSV", "DXF_NEST", "DXF_BLOCKS", "HPGL"})
    void aStyleOfTheLibraryIsTheSameOnceItWasAFile(FileFormat format) throws IOException {
        StyleFile made = StyleFile.of(GOWN, RULES, SIZES)
                .finished(
                        finish -> finish.seamAllowance(1).sideSeamAllowance(1.5).hemAllowance(2));
        Path file = folder.resolve("gown.json");
        made.write(file);
        byte[] expected = file(
                GOWN.grade(RULES, SIZES)
                        .pieces(finish ->
                                finish.seamAllowance(1).sideSeamAllowance(1.5).hemAllowance(2)),
                format);
        assertTrue(expected.length > 1000);
        assertArrayEquals(expected, file(StyleFile.read(file).pieces(), format));
    }

    @Test
    void theFileIsForReadersOfEveryLanguage() throws IOException {
        StyleFile gown = StyleFile.of(GOWN, RULES, SIZES);
        Language french = Language.find("fr").orElseThrow();
        assertArrayEquals(gown.written(), gown.in(french).written());
        assertArrayEquals(
                file(GOWN.language(french).grade(RULES, SIZES).pieces(), FileFormat.SVG),
                file(StyleFile.read(gown.written()).in(french).pieces(), FileFormat.SVG));
    }

    @Test
    void whatIsAsUsualIsLeftOut() {
        assertEquals(
                JsonMapper.shared().readTree("""
                    {"name":"Choir gown sleeve","revision":"1","units":"cm","baseSize":"40",
                     "sizes":["36","38","40","42","44","46"],
                     "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
                     "overlay":{"rise":14,"length":34,"frontGap":6,"backGap":6,"pleats":{"count":8,"direction":"apex"}},
                     "underSleeve":{"shaping":"tapered","elbow":30,"wrist":22},
                     "grade":{"bicep":1.3,"armhole":[1.5,1.5,1.6,1.6,1.7]}}\
                    """),
                JsonMapper.shared().readTree(StyleFile.of(GOWN, RULES, SIZES).written()));
    }

    @Test
    void theExampleComesApartIntoTheStepsOfTheLibrary() throws IOException {
        StyleFile gown = StyleFile.read(Path.of("..", "examples", "choir-gown.json"));
        assertEquals(List.of("36", "38", "40", "42", "44", "46"), gown.sizes().labels());
        assertEquals(Unit.CENTIMETRE, gown.sleeve().title().unit());
        assertEquals(
                gown.grade().specTable().rows().size(),
                gown.sleeve()
                        .grade(gown.rules(), gown.sizes())
                        .specTable()
                        .rows()
                        .size());
        assertArrayEquals(
                file(gown.pieces(), FileFormat.SVG),
                file(StyleFile.read(gown.written()).pieces(), FileFormat.SVG));
    }

    @Test
    void whatIsWrongIsNamedAtItsFieldWithWhatWouldWork() {
        byte[] wrong = new String(StyleFile.of(GOWN, RULES, SIZES).written(), StandardCharsets.UTF_8)
                .replace("\"armhole\" : 45", "\"armhole\" : \"wide\"")
                .replace("\"rise\"", "\"rize\"")
                .getBytes(StandardCharsets.UTF_8);
        List<String> fields =
                assertThrows(RefusedRequestException.class, () -> StyleFile.read(wrong)).violations().stream()
                        .map(FieldViolation::field)
                        .toList();
        assertTrue(fields.contains("/sleeve/armhole") && fields.contains("/overlay/rize"), fields::toString);
    }

    /** Common practice, no source: a cap line half as long again as its armhole is as much as can be gathered in. */
    @Test
    void anArmholeThatIsFarTooShortIsNamedWithOneThatTakesTheCap() throws IOException {
        double capLine = baseCapLine();
        StyleFile gown = StyleFile.of(GOWN.sleeve(sleeve -> sleeve.armhole(20)), GradeRules.in(Unit.CENTIMETRE), SIZES);
        FieldViolation armhole = assertThrows(RefusedRequestException.class, gown::pieces).violations().stream()
                .filter(violation -> violation.field().equals("/sleeve/armhole"))
                .findFirst()
                .orElseThrow();
        assertEquals(capLine / 1.5, armhole.minimum().orElseThrow(), 0.001);
        assertEquals(Unit.CENTIMETRE.symbol(), armhole.unit().orElseThrow());
    }

    /** The cap line of size 40 as the CSV has it, cm: style, revision, code, name, unit, then the sizes. */
    private static double baseCapLine() throws IOException {
        return new String(file(StyleFile.of(GOWN, RULES, SIZES).pieces(), FileFormat.CSV), StandardCharsets.UTF_8)
                .lines()
                .map(line -> line.split(","))
                .filter(cells -> cells.length > 7 && cells[2].equals("capLine"))
                .mapToDouble(cells -> Double.parseDouble(cells[7]))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatIsNoJsonIsRefusedWithItsPlace() {
        RefusedRequestException refused = assertThrows(
                RefusedRequestException.class,
                () -> StyleFile.read("{\n \"units\": \"cm\",,}".getBytes(StandardCharsets.UTF_8)));
        assertTrue(refused.detail().toString().contains("line 2"), refused.detail()::toString);
    }
}
