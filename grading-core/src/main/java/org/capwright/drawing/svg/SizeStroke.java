package org.capwright.drawing.svg;

/**
 * How the line of one size is drawn in a nest: told apart by dash pattern and by its label, and besides by colour. The colours are the eight that M. Okabe and
 * K. Ito (2002) chose to be told apart with any colour vision, less yellow, which is too light for a line on paper (from memory).
 *
 * @param colour stroke colour
 * @param dashes dash lengths in mm; empty for a solid line
 */
record SizeStroke(String colour, String dashes) {

    private static final String[] COLOURS = {"#0072b2", "#d55e00", "#009e73", "#cc79a7", "#56b4e9", "#e69f00"};

    private static final String[] DASHES = {"6 1.5", "3 1.5", "8 1.5 1.5 1.5", "1.5 1.5", "5 1.5 1 1.5 1 1.5", "10 2"};

    static final SizeStroke BASE = new SizeStroke("#000000", "");

    /** The stroke of the size at a position; sizes next to one another differ in both. */
    static SizeStroke of(int position, int base) {
        if (position == base) {
            return BASE;
        }
        int place = position < base ? position : position - 1;
        // With more than six sizes the dashes move on, so that colour and dashes together repeat only after 36.
        return new SizeStroke(COLOURS[place % 6], DASHES[(place + place / 6) % 6]);
    }
}
