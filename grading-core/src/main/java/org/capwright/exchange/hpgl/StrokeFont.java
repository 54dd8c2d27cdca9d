package org.capwright.exchange.hpgl;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.geometry.PointsBuilder;

/**
 * Capital letters of single strokes, drawn for this engine, so that a plotter needs no font. A letter is 4 units wide and 6 high and takes 6 in width. Accents
 * are left off; a sign that the font does not have is drawn as a box.
 */
final class StrokeFont {

    private static final double HEIGHT = 6;
    private static final double WIDTH = 4;
    private static final double ADVANCE = 6;

    private static final String[] BOX = {"0040460600"};

    /** A line per letter: its strokes, each a run of points of two digits, x and y. */
    private static final String LETTERS = """
        A 0004264440 0242
        B 00063645443303 3342413000
        C 4536160501103041
        D 00062644422000
        E 46060040 0333
        F 460600 0333
        G 45361605011030414323
        H 0006 4046 0343
        I 1030 2026 1636
        J 0110304146
        K 0006 460340
        L 060040
        M 0006234640
        N 00064046
        O 103041453616050110
        P 00063645443303
        Q 103041453616050110 2240
        R 00063645443303 2340
        S 453616050413334241301001
        T 0646 2026
        U 060110304146
        V 062046
        W 0610233046
        X 0046 0640
        Y 062346 2320
        Z 06460040
        0 103041453616050110 0145
        1 152620 1030
        2 05163645440040
        3 0516364544334241301001 1333
        4 30360242
        5 460603334241301001
        6 4536160501103041423303
        7 064610
        8 13334445361605041302011030414233
        9 0110304145361605041343
        - 0343
        + 0343 2125
        = 0242 0444
        . 2021
        , 2110
        : 2122 2425
        ; 2110 2425
        / 0046
        ( 36252130
        ) 16252110
        ' 2526
        " 1516 3536
        # 1016 3036 0242 0444
        % 0046 0516 3041
        * 1135 1531 0343
        ! 2021 2326
        ? 05163645442322 2021
        _ 0040
        """;

    private static final Map<Character, String[]> STROKES = new HashMap<>();

    static {
        for (String letter : LETTERS.split("\n")) {
            STROKES.put(letter.charAt(0), letter.substring(2).split(" "));
        }
    }

    private StrokeFont() {}

    /** The text in the letters of the font: capitals without accents. */
    private static String plain(String text) {
        if (text.chars().allMatch(c -> c < 0x80)) {
            return text.toUpperCase(Locale.ROOT);
        }
        return Normalizer.normalize(text, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}", "")
                .replace('\u2044', '/')
                .replace('\u2013', '-')
                .replace('\u00d7', 'X')
                .toUpperCase(Locale.ROOT);
    }

    /**
     * The strokes of a line of text.
     *
     * @param text the words
     * @param at left end of the base line, mm
     * @param height height of the letters, mm; they are drawn narrower and lower together where the text would be too wide
     * @param width greatest width, mm
     * @return strokes of two or more points
     */
    static List<Points> strokes(String text, Point at, double height, double width) {
        String words = plain(text);
        double scale = Math.min(height / HEIGHT, width / Math.max(WIDTH, words.length() * ADVANCE));
        List<Points> strokes = new ArrayList<>();
        double x = at.x();
        for (int i = 0; i < words.length(); i++) {
            char letter = words.charAt(i);
            if (letter > ' ') {
                for (String run : STROKES.getOrDefault(letter, BOX)) {
                    strokes.add(stroke(run, x, at.y(), scale));
                }
            }
            x += ADVANCE * scale;
        }
        return strokes;
    }

    private static Points stroke(String run, double x, double y, double scale) {
        PointsBuilder points = new PointsBuilder(run.length() / 2);
        for (int i = 0; i < run.length(); i += 2) {
            points.add(x + (run.charAt(i) - '0') * scale, y + (run.charAt(i + 1) - '0') * scale);
        }
        return points.points();
    }
}
