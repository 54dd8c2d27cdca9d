package org.capwright.gradeimport;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.capwright.check.CheckedMeasure;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.OutsideTool;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A spec table in workbooks that openpyxl writes (Debian package python3-openpyxl), whole and broken. */
class WorkbookTest {

    private static final double[] BICEP = {347, 360, 373, 386};
    private static final double[] ARMHOLE = {435, 450, 465, 480};

    @TempDir
    static Path folder;

    @BeforeAll
    static void write() {
        OutsideTool.runScript(
                "python3-openpyxl", WorkbookTest.class, "write_workbooks.py", folder, List.of(folder.toString()));
    }

    @ParameterizedTest
    @CsvSource({
        "plain.xlsx, 0",
        "unit-in-format.xlsx, 0",
        // Shown in eighths of an inch, as by a tape.
        "inches-in-format.xlsx, 3.175",
        "as-shown.xlsx, 0",
        "sheets.xlsx, 0",
        "rich.xlsx, 0",
        "inline.xlsm, 0",
        "long-format.xlsx, 0"
    })
    void isReadAsItIsShown(String name, double step) throws IOException, ForeignInputException {
        ForeignGrade read = read(name);
        assertEquals(
                List.of("38", "40", "42", "44"),
                read.grade().sizes().stream().map(size -> size.label()).toList());
        for (int i = 0; i < BICEP.length; i++) {
            assertEquals(
                    shown(BICEP[i], step),
                    read.grade().value(i, CheckedMeasure.BICEP).orElseThrow(),
                    1e-9);
            assertEquals(
                    shown(ARMHOLE[i], step),
                    read.grade().value(i, CheckedMeasure.ARMHOLE).orElseThrow(),
                    1e-9);
        }
    }

    private static double shown(double length, double step) {
        return step == 0 ? length : step * Math.rint(length / step);
    }

    @Test
    void otherSheetsAreTold() throws IOException, ForeignInputException {
        ForeignGrade read = read("sheets.xlsx");
        assertEquals(
                List.of("Not read, so not judged: sheet Old of the workbook; one sheet is read, Measures."),
                Unread.of(read).stream()
                        .map(finding -> finding.message().sentence().toString())
                        .toList());
        for (String told :
                List.of("sheet Cover of the", "sheet Hidden of the", "sheet Long of the", "sheet Measures of the")) {
            assertTrue(
                    read.traces().stream()
                            .anyMatch(note -> note.words().toString().contains(told)),
                    read.traces().toString());
        }
        // Rows are counted as the spreadsheet counts them.
        assertTrue(read.traces().stream()
                .anyMatch(note -> note.line() == 7 && note.subject().equals("bicep")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "formula.xlsx|line 5: a formula whose result is not stored",
                "entities.xlsx|the workbook is broken",
                "external.xlsx|the workbook is broken",
                "cut.xlsx|the workbook is broken",
                "half.xlsx|the workbook is broken",
                "endless.xlsx|the workbook is broken",
                "no-text.xlsx|the workbook is broken",
                "backwards.xlsx|the workbook is broken",
                "wide.xlsx|line 4: 257 cells in a row; at most 256 are read",
                "deep.xlsx|line 1048576: a spec table of more than 5000 lines is not read",
                "bomb.xlsx|unpacks to more than 20 million bytes",
                "picture-bomb.xlsx|unpacks to more than 20 million bytes",
                "many.xlsx|more than 2000 files",
                "repeated.xlsx|the workbook is broken",
                "binary.xlsb|save it as .xlsx",
                "open.ods|save it as .xlsx",
                "locked.xlsx|without a password",
                "empty.xlsx|the file holds no table"
            })
    void isRefusedWithWhatToDo(String name, String why) {
        ForeignInputException refused = assertThrows(ForeignInputException.class, () -> read(name));
        assertTrue(refused.getMessage().contains(why), refused.getMessage());
    }

    private static ForeignGrade read(String name) throws IOException, ForeignInputException {
        return SpecTableReader.read(
                ForeignFile.of(name, Files.readAllBytes(folder.resolve(name))), ForeignOptions.none());
    }
}
