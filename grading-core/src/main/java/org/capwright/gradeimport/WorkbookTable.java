package org.capwright.gradeimport;

import java.util.List;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.table.CsvGrid;
import org.capwright.exchange.table.Workbook;
import org.capwright.words.Text;

/** The one sheet of a workbook that is read: the first in which points of measure are known. Others are told, those that name points of measure as not read. */
final class WorkbookTable {

    private WorkbookTable() {}

    static CsvGrid grid(ForeignFile file, ImportNotes traces) throws ForeignInputException {
        List<Workbook.Sheet> all = Workbook.sheets(file);
        List<Workbook.Sheet> shown = all.stream().filter(Workbook.Sheet::shown).toList();
        if (shown.isEmpty()) {
            throw new ForeignInputException(file.name(), 0, Text.of("the file holds no table"));
        }
        Workbook.Sheet read =
                shown.stream().filter(WorkbookTable::namesPoints).findFirst().orElse(shown.get(0));
        if (read.refused().isPresent()) {
            throw read.refused().get();
        }
        traces.found(
                0,
                ImportNote.FILE,
                Text.of("sheet {sheet} of the workbook").with("sheet", ForeignInputException.shown(read.name())));
        for (Workbook.Sheet other : all) {
            Text words = Text.of("sheet {sheet} of the workbook; one sheet is read, {read}")
                    .with("sheet", ForeignInputException.shown(other.name()))
                    .with("read", ForeignInputException.shown(read.name()));
            if (other != read && other.shown() && namesPoints(other)) {
                traces.notRead(0, ImportNote.FILE, words);
            } else if (other != read) {
                traces.leftOut(0, ImportNote.FILE, words);
            }
        }
        return read.grid();
    }

    private static boolean namesPoints(Workbook.Sheet sheet) {
        return sheet.grid().rows().stream()
                .flatMap(row -> row.cells().stream())
                .anyMatch(cell -> PointNames.match(cell).isPresent());
    }
}
