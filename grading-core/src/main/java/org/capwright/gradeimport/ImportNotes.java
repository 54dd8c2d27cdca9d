package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.List;
import org.capwright.words.Text;

/** Collects the steps of a reading; a hostile file cannot make the list long. */
final class ImportNotes {

    private static final int MOST = 2000;

    private final String file;
    private final List<ImportNote> list;

    ImportNotes(String file) {
        this(file, new ArrayList<>());
    }

    private ImportNotes(String file, List<ImportNote> list) {
        this.file = file;
        this.list = list;
    }

    /** The same list, told of another file. */
    ImportNotes of(String otherFile) {
        return new ImportNotes(otherFile, list);
    }

    String file() {
        return file;
    }

    void found(int line, String subject, Text words) {
        add(ImportNote.Kind.FOUND, line, subject, words);
    }

    void assumed(int line, String subject, Text words) {
        add(ImportNote.Kind.ASSUMED, line, subject, words);
    }

    void leftOut(int line, String subject, Text words) {
        add(ImportNote.Kind.LEFT_OUT, line, subject, words);
    }

    void notRead(int line, String subject, Text words) {
        add(ImportNote.Kind.NOT_READ, line, subject, words);
    }

    private void add(ImportNote.Kind kind, int line, String subject, Text words) {
        if (list.size() < MOST) {
            list.add(new ImportNote(kind, file, line, subject, words));
        }
    }

    List<ImportNote> list() {
        return List.copyOf(list);
    }
}
