package org.capwright.drawing;

import java.util.List;

/** How what is drawn looks in the end: as it is drawn, or made to be seen from far away. */
public enum Appearance {
    /** As it is drawn, for paper. */
    ON_PAPER,
    /** Thick lines on a light ground, for a projector. */
    LIGHT_GROUND,
    /** Thick light lines on a dark ground, for a projector over dark cloth or in a dim room. */
    DARK_GROUND;

    /** A projector of 1920 dots over a table 1.5 m long shows a dot of 0.8 mm: no line is thinner than that, mm. Arithmetic, no source. */
    private static final double THINNEST = 1;

    private static final double THICKER = 3;

    /** Dashes and gaps grow as their line does, so that gaps stay open. */
    private static final double LONGER = 4;

    /** Words of seven dots can be read, mm. Common practice, no source. */
    private static final double SMALLEST_LETTERS = 5.5;

    /** How much light is left in the darkest part of a colour that is lit up. */
    private static final double GLOW = 0.5;

    /** How much light is left of what only helps. */
    private static final double FAINT = 0.4;

    /** A dark ground that lets the table be seen. */
    private static final Ink NIGHT = Ink.grey(0.05);

    /**
     * The ground that everything lies on.
     *
     * @return its colour
     */
    public Ink ground() {
        return this == DARK_GROUND ? NIGHT : Ink.WHITE;
    }

    /**
     * A line as it looks.
     *
     * @param stroke as it is drawn
     * @return as it looks
     */
    public Stroke of(Stroke stroke) {
        if (this == ON_PAPER) {
            return stroke;
        }
        List<Double> dash = stroke.dash().stream().map(part -> part * LONGER).toList();
        return new Stroke(of(stroke.ink()), THINNEST + THICKER * stroke.width(), dash);
    }

    /**
     * A colour as it looks: on a dark ground its hue at full light, black as white and white as the ground.
     *
     * @param ink as it is drawn
     * @return as it looks
     */
    public Ink of(Ink ink) {
        if (this != DARK_GROUND) {
            return ink;
        }
        if (ink.equals(Ink.SHEET)) {
            return ink.times(FAINT);
        }
        double most = Math.max(ink.red(), Math.max(ink.green(), ink.blue()));
        if (ink.equals(Ink.WHITE)) {
            return NIGHT;
        }
        return most == 0 ? Ink.WHITE : new Ink(lit(ink.red() / most), lit(ink.green() / most), lit(ink.blue() / most));
    }

    private static double lit(double part) {
        return GLOW + (1 - GLOW) * part;
    }

    /**
     * Letters as they look.
     *
     * @param letters as they are drawn
     * @return as they look
     */
    public Letters of(Letters letters) {
        return this == ON_PAPER
                ? letters
                : new Letters(letters.face(), Math.max(SMALLEST_LETTERS, letters.size()), of(letters.ink()));
    }
}
