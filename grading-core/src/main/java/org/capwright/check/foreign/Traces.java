package org.capwright.check.foreign;

import java.util.ArrayList;
import java.util.List;

/** Collects the steps of a reading; a hostile file cannot make the list long. */
final class Traces {

    private static final int MOST = 2000;

    private final String file;
    private final List<Trace> list;

    Traces(String file) {
        this(file, new ArrayList<>());
    }

    private Traces(String file, List<Trace> list) {
        this.file = file;
        this.list = list;
    }

    /** The same list, told of another file. */
    Traces of(String otherFile) {
        return new Traces(otherFile, list);
    }

    String file() {
        return file;
    }

    void found(int line, String subject, String words) {
        add(Trace.Kind.FOUND, line, subject, words);
    }

    void assumed(int line, String subject, String words) {
        add(Trace.Kind.ASSUMED, line, subject, words);
    }

    void leftOut(int line, String subject, String words) {
        add(Trace.Kind.LEFT_OUT, line, subject, words);
    }

    private void add(Trace.Kind kind, int line, String subject, String words) {
        if (list.size() < MOST) {
            list.add(new Trace(kind, file, line, subject, words));
        }
    }

    List<Trace> list() {
        return List.copyOf(list);
    }
}
