package org.capwright.exchange;

import java.util.Locale;

/** Names in camelCase as words: {@code upperArmGirth} is printed as upper arm girth. */
public final class PrintedName {

    private PrintedName() {}

    /**
     * A code as words.
     *
     * @param code a name in camelCase
     * @return words in small letters
     */
    public static String of(String code) {
        return code.replaceAll("(\\p{Ll})(\\p{Lu})", "$1 $2").toLowerCase(Locale.ROOT);
    }

    /**
     * A code as words at the beginning of a line.
     *
     * @param code a name in camelCase
     * @return words, the first with a capital letter
     */
    public static String capital(String code) {
        String words = of(code);
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /**
     * A growth with its sign; the minus sign is as wide as the plus sign.
     *
     * @param figure a number, with a hyphen before it if it is negative
     * @return the same with a plus or a minus sign, but 0 without one
     */
    public static String signed(String figure) {
        return figure.startsWith("-") ? "−" + figure.substring(1) : figure.equals("0") ? "0" : "+" + figure;
    }
}
