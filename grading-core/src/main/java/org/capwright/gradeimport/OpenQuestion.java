package org.capwright.gradeimport;

import java.util.List;
import org.capwright.quantity.Subject;
import org.capwright.words.Text;

/**
 * Something about a sheet that only its sender knows. What it asks about is not judged until it is answered.
 *
 * @param line line of the file, the first is 1; 0 where it is about the whole file
 * @param subject what it asks about: a point of measure or the file
 * @param sizes the first and last size it asks about; empty where it is about all
 * @param words what is odd, with the figures it rests on
 * @param answers what to set, one way for each meaning
 */
public record OpenQuestion(int line, Subject subject, List<String> sizes, Text words, Text answers) {

    /**
     * Copies the sizes.
     *
     * @param line line of the file, the first is 1; 0 where it is about the whole file
     * @param subject what it asks about: a point of measure or the file
     * @param sizes the first and last size it asks about; empty where it is about all
     * @param words what is odd, with the figures it rests on
     * @param answers what to set, one way for each meaning
     */
    public OpenQuestion {
        sizes = List.copyOf(sizes);
    }
}
