package org.capwright;

/** A format in which pieces are written. The same pieces give the same bytes: no clock is read. */
public enum FileFormat {
    /** The nest as a drawing. */
    SVG("svg", "The nest as SVG 1.1 at true scale, one user unit a millimetre, with a test square."),
    /** The spec table. */
    CSV(
            "csv",
            "The spec table, RFC 4180: a header line, then one line per point of measure with its values and jumps."),
    /** Pages to print. */
    PDF("pdf", "The pieces at true scale on sheets to be glued together, or on a roll, as paper asks, with a cover."),
    /** For pen plotters. */
    HPGL(
            "plt",
            "All pieces in all sizes side by side for a pen plotter, HP-GL, 40 units to the millimetre: pen 1 cuts, pen 2 marks."
                    + " The roll is as wide as plotter or paper asks, or 900 mm, or wider where a piece needs it."),
    /** The nest for cutters and pattern rooms. */
    DXF_NEST("dxf", "All sizes of each piece over one another, DXF R12."),
    /** Single pieces for cutters and pattern rooms. */
    DXF_BLOCKS("dxf", "One block per piece and size, DXF R12."),
    /** All of them. */
    ZIP(
            "zip",
            "All of the forms as files: the nest as SVG and DXF, DXF blocks, the base size as DXF with its grade rule table where"
                    + " the points can be matched, HP-GL, PDF, the spec table, and the lays where materials were asked for.");

    private final String ending;
    private final String meaning;

    FileFormat(String ending, String meaning) {
        this.ending = ending;
        this.meaning = meaning;
    }

    /**
     * The end of the file name.
     *
     * @return without the dot
     */
    public String ending() {
        return ending;
    }

    /**
     * What such a file holds.
     *
     * @return one or two sentences
     */
    public String meaning() {
        return meaning;
    }
}
