package org.capwright.gradeimport;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What piece a name speaks of. */
enum PieceName {
    /** A sleeve that is set into the armhole. */
    SLEEVE,
    /** The overlay over it, in main cloth. */
    OVERLAY,
    /** A piece that is neither. */
    OTHER,
    /** Not told. */
    UNKNOWN;

    private static final Pattern NOT_MAIN = Pattern.compile(
            "lining|interfacing|interlining|fusing|facing|cuff|placket|pocket|collar|bodice|yoke|hood|trouser|skirt|binding"
                    + "|futter|einlage|manschette|b\u00fcndchen|buendchen|kragen|tasche|doublure|entoilage|thermocollant|parementure|poignet|poche"
                    + "|forro|entretela|pu\u00f1o|cuello|bolsillo|fodera|teletta|polsino|colletto|tasca|voering|manchet|kraag");
    private static final Pattern SLEEVE_WORDS = Pattern.compile(
            "sleeve|\u00e4rmel|aermel|armel|manche(?!tte)|manica|manga|mouw|\u00e6rme|rukav|r\u0119kaw|rekaw|\u8896");

    /** A longer text is no name. */
    private static final int LONGEST = 80;

    private static final Pattern BESIDE = Pattern.compile(
            ".*?(?:overlay|" + SLEEVE_WORDS.pattern() + ")\\p{L}*[\\s:,_.\u2013-]+(.+)",
            Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);

    /** The size behind the name of a sleeve or an overlay in a text such as {@code Sleeve 36} or {@code Sleeve, size 36}. */
    static Optional<String> sizeBeside(String text) {
        if (text.length() > LONGEST) {
            return Optional.empty();
        }
        PieceName piece = of(text);
        Matcher matcher = BESIDE.matcher(text.strip());
        if (piece == UNKNOWN || piece == OTHER || !matcher.matches()) {
            return Optional.empty();
        }
        String behind = matcher.group(1).strip();
        return Optional.of(SizeScale.named(behind).orElse(behind)).filter(SizeScale::isLabel);
    }

    static PieceName of(String text) {
        String name = text.toLowerCase(Locale.ROOT);
        if (name.contains("overlay")) {
            return NOT_MAIN.matcher(name).find() ? OTHER : OVERLAY;
        }
        if (NOT_MAIN.matcher(name).find()) {
            return OTHER;
        }
        return SLEEVE_WORDS.matcher(name).find() ? SLEEVE : UNKNOWN;
    }
}
