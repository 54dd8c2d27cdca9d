package org.capwright.exchange;

import org.capwright.words.Text;

/** Thrown when a file cannot be read as a grade. Says where and why, in words for the person who sent the file. */
public class ForeignInputException extends Exception {

    private static final long serialVersionUID = 1L;

    private static final int LONGEST = 40;

    /** Name of the file as given. */
    private final String file;

    /** The line, the first is 1; 0 where no line is to blame. */
    private final int line;

    /** What is wrong and what would work. */
    private final transient Text reason;

    /**
     * An exception for a place in a file.
     *
     * @param file name of the file as given
     * @param line line of the file, the first is 1; 0 where no line is to blame
     * @param reason what is wrong and what would work
     */
    public ForeignInputException(String file, int line, Text reason) {
        super((file.isEmpty() ? "" : shown(file) + ", ") + (line > 0 ? "line " + line + ": " : "") + reason);
        this.file = file;
        this.line = line;
        this.reason = reason;
    }

    /**
     * Which file.
     *
     * @return its name as given
     */
    public String file() {
        return file;
    }

    /**
     * Which line.
     *
     * @return the line, the first is 1; 0 where no line is to blame
     */
    public int line() {
        return line;
    }

    /**
     * What is wrong and what would work.
     *
     * @return no sentence of its own: it may stand behind the name of a file
     */
    public Text reason() {
        return reason;
    }

    /**
     * A piece of a file as it can stand in a message.
     *
     * @param text any text
     * @return its first 40 characters, without control characters
     */
    public static String shown(String text) {
        StringBuilder out = new StringBuilder(LONGEST + 3);
        for (int i = 0; i < Math.min(text.length(), LONGEST); i++) {
            char c = text.charAt(i);
            out.append(Character.isISOControl(c) || Character.isSurrogate(c) ? '\ufffd' : c);
        }
        return text.length() > LONGEST ? out.append("...").toString() : out.toString();
    }
}
