package org.capwright.service.http;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.capwright.service.http.problem.WrongParameter;
import org.capwright.words.Text;

/**
 * The part of a list that was asked for. Its cursor says after which entry it begins, so entries that come or go meanwhile shift nothing.
 *
 * @param limit the most entries of the answer
 * @param after place in the list after which it begins; none for the beginning
 */
public record PageAsked(int limit, Optional<String> after) {

    /** Name of the parameter that says the most entries. */
    public static final String LIMIT = "limit";

    /** Name of the parameter that says where the page begins. */
    public static final String CURSOR = "cursor";

    /** The most entries where nothing is said. */
    public static final String USUAL = "50";

    /** The most entries of an answer. */
    public static final int MOST = 200;

    /**
     * Reads the parameters.
     *
     * @param limit the most entries, in digits
     * @param cursor cursor of an answer before, or empty
     * @return the page
     * @throws org.capwright.service.http.problem.ProblemException if one of them is wrong
     */
    public static PageAsked of(String limit, String cursor) {
        int most;
        try {
            most = Integer.parseInt(limit);
        } catch (NumberFormatException e) {
            most = 0;
        }
        if (most < 1 || most > MOST) {
            throw WrongParameter.of(
                    LIMIT, Text.of("must be a whole number from 1 to {most}").with("most", MOST), limit);
        }
        if (cursor.isEmpty()) {
            return new PageAsked(most, Optional.empty());
        }
        try {
            String place = new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
            if (cursor(place).equals(cursor) && place.chars().allMatch(c -> c >= ' ' && c < 0xD800)) {
                return new PageAsked(most, Optional.of(place));
            }
        } catch (IllegalArgumentException e) {
            // said below
        }
        throw wrong(cursor);
    }

    /**
     * Refuses a cursor that none of our answers holds.
     *
     * @param place what was read from it
     * @return an exception that answers 400
     */
    public static RuntimeException wrongCursor(String place) {
        return wrong(cursor(place));
    }

    private static RuntimeException wrong(String cursor) {
        return WrongParameter.of(CURSOR, "must be the value of next from an earlier answer", cursor);
    }

    /**
     * The cursor of the next page.
     *
     * @param found entries, one more than asked for where there are more
     * @param place the place of an entry in the list
     * @param <T> an entry
     * @return none on the last page
     */
    public <T> Optional<String> next(List<T> found, Function<T, String> place) {
        return found.size() > limit ? Optional.of(cursor(place.apply(found.get(limit - 1)))) : Optional.empty();
    }

    /**
     * The entries of the page.
     *
     * @param found entries, one more than asked for where there are more
     * @param <T> an entry
     * @return no more than asked for
     */
    public <T> List<T> shown(List<T> found) {
        return found.subList(0, Math.min(limit, found.size()));
    }

    private static String cursor(String place) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(place.getBytes(StandardCharsets.UTF_8));
    }
}
