package org.capwright.export.pdf;

import java.util.Locale;

/** Names in camelCase as words: {@code upperArmGirth} is printed as upper arm girth. */
final class PrintedName {

    private PrintedName() {}

    static String of(String code) {
        return code.replaceAll("(\\p{Ll})(\\p{Lu})", "$1 $2").toLowerCase(Locale.ROOT);
    }

    /** The same at the beginning of a line. */
    static String capital(String code) {
        String words = of(code);
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    /** A growth with its sign; the minus sign is as wide as the plus sign. */
    static String signed(String figure) {
        return figure.startsWith("-") ? "−" + figure.substring(1) : figure.equals("0") ? "0" : "+" + figure;
    }
}
