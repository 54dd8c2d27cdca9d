package org.capwright.gradeimport;

import org.capwright.words.Text;

/**
 * One step of how a file was understood.
 *
 * @param kind whether it was found, assumed or left out
 * @param file name of the file
 * @param line line of the file, the first is 1; 0 where it is about the whole file
 * @param subject what it is about: a size label, the code of a point of measure, or {@code file}
 * @param words what was taken for what and why
 */
public record ImportNote(Kind kind, String file, int line, String subject, Text words) {

    /** The subject of a step that is about a whole file. */
    public static final String FILE = "file";

    /** How sure a step is. */
    public enum Kind {
        /** The file says so. */
        FOUND,
        /** The file does not say so; taken as the likeliest and to be looked at. */
        ASSUMED,
        /** Something of the file that no check uses. */
        LEFT_OUT,
        /** Figures of the file that may belong to the grade and were not read: what they say is not judged. */
        NOT_READ
    }
}
