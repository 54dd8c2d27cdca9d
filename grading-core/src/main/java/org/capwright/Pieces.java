package org.capwright;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.check.CheckedGrade;
import org.capwright.check.Finding;
import org.capwright.check.Findings;
import org.capwright.check.Thresholds;
import org.capwright.exchange.FileName;
import org.capwright.exchange.dxf.DxfExport;
import org.capwright.exchange.hpgl.HpglExport;
import org.capwright.exchange.table.SpecCsv;
import org.capwright.grade.Alignment;
import org.capwright.grade.SpecTable;
import org.capwright.lay.Fabric;
import org.capwright.lay.LayEffort;
import org.capwright.lay.LayWatch;
import org.capwright.lay.Materials;
import org.capwright.lay.Trimming;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.SewingOrder;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Rounding;
import org.capwright.report.Paper;
import org.capwright.report.PdfExport;
import org.capwright.report.PdfOptions;
import org.capwright.report.SvgExport;
import org.capwright.report.WornPicture;
import org.capwright.tables.SizeTable;
import org.capwright.words.Text;

/**
 * The pieces of a run in every size, and the files that are made of them. Immutable: what says how files are made returns new pieces. Usual are a nest on the fold line and
 * the bicep line, A4 sheets with every size, a plotter's roll of 900 mm, figures as they are, and no cloths. No stream is closed, and none is read back.
 */
public final class Pieces {

    /** A usual roll where the paper asked for is a sheet, mm. */
    private static final double USUAL_ROLL = 900;

    private static final String WORN =
            "The base size as it is worn: a simulation sent with the request, not a fitting.";

    private final PatternSet patterns;
    private final Alignment alignment;
    private final Paper paper;
    private final List<String> printed;
    private final OptionalDouble plotterWidth;
    private final Optional<Rounding> rounding;
    private final Optional<Materials> materials;
    private final Optional<WornPicture> worn;

    private Pieces(
            PatternSet patterns,
            Alignment alignment,
            Paper paper,
            List<String> printed,
            OptionalDouble plotterWidth,
            Optional<Rounding> rounding,
            Optional<Materials> materials,
            Optional<WornPicture> worn) {
        this.patterns = patterns;
        this.alignment = alignment;
        this.paper = paper;
        this.printed = printed;
        this.plotterWidth = plotterWidth;
        this.rounding = rounding;
        this.materials = materials;
        this.worn = worn;
    }

    static Pieces of(PatternSet patterns) {
        return new Pieces(
                patterns,
                Alignment.FOLD_AND_BICEP_LINE,
                Paper.A4,
                List.of(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * The same pieces with their nests on another point.
     *
     * @param point the point on which the sizes lie over one another
     * @return the pieces
     */
    public Pieces alignedOn(Alignment point) {
        return new Pieces(patterns, point, paper, printed, plotterWidth, rounding, materials, worn);
    }

    /**
     * The same pieces on other paper.
     *
     * @param sheetsOrRoll what a PDF is printed on
     * @return the pieces
     */
    public Pieces onPaper(Paper sheetsOrRoll) {
        return new Pieces(patterns, alignment, sheetsOrRoll, printed, plotterWidth, rounding, materials, worn);
    }

    /**
     * The same pieces for sheets of ISO 216 A0, as copy shops plot them.
     *
     * @return the pieces
     */
    public Pieces onA0() {
        return onPaper(Paper.A0);
    }

    /**
     * The same pieces for sheets of ISO 216 A3, glued together.
     *
     * @return the pieces
     */
    public Pieces onA3() {
        return onPaper(Paper.A3);
    }

    /**
     * The same pieces for sheets of US Letter, glued together.
     *
     * @return the pieces
     */
    public Pieces onLetter() {
        return onPaper(Paper.LETTER);
    }

    /**
     * The same pieces as a PDF of one page for a projector over the cutting table: thick light lines on a dark ground, a grid of 10 cm, and a length each way to set the projector by.
     *
     * @param width width of the table that the pieces are laid within, mm
     * @return the same pieces, projected
     */
    public Pieces projectedOnDark(double width) {
        return onPaper(new Paper.Projection(width, Paper.Ground.DARK));
    }

    /**
     * The same as {@link #projectedOnDark}, with dark lines on a light ground.
     *
     * @param width width of the table that the pieces are laid within, mm
     * @return the same pieces, projected
     */
    public Pieces projectedOnLight(double width) {
        return onPaper(new Paper.Projection(width, Paper.Ground.LIGHT));
    }

    /**
     * The same pieces on one page from a roll.
     *
     * @param width width of the paper, mm; the widest piece and a margin of 10 mm on both sides must fit
     * @return the pieces
     */
    public Pieces onRoll(double width) {
        return onPaper(new Paper.Roll(width));
    }

    /**
     * The same pieces printed, and drawn as SVG, in some sizes.
     *
     * @param labels labels of sizes; empty for all
     * @return the pieces
     */
    public Pieces printedIn(List<String> labels) {
        return new Pieces(patterns, alignment, paper, List.copyOf(labels), plotterWidth, rounding, materials, worn);
    }

    /**
     * The same pieces for a plotter whose roll is known.
     *
     * @param width what the plotter can draw, mm
     * @return the pieces
     * @throws InvalidMeasuresException if a piece is wider than the roll both ways, with the width that would do
     */
    public Pieces onPlotter(double width) {
        HpglExport.checkWidth(patterns, width);
        return new Pieces(patterns, alignment, paper, printed, OptionalDouble.of(width), rounding, materials, worn);
    }

    /**
     * The same pieces with the figures of the spec table rounded in files.
     *
     * @param grid the grid of the figures
     * @return the pieces
     */
    public Pieces roundedTo(Rounding grid) {
        return new Pieces(patterns, alignment, paper, printed, plotterWidth, Optional.of(grid), materials, worn);
    }

    /**
     * The same pieces with what to buy shown in the PDF and its lays in the archive.
     *
     * @param needs what {@link #buy(List)} or {@link #buy(List, Trimming, Map)} says
     * @return the pieces
     */
    public Pieces withMaterials(Materials needs) {
        return new Pieces(patterns, alignment, paper, printed, plotterWidth, rounding, Optional.of(needs), worn);
    }

    /**
     * The same pieces with a picture of the sleeve as it is worn, on the cover of the PDF and in the archive.
     *
     * @param png a PNG file, up to 1600 dots each way
     * @return the pieces
     * @throws InvalidMeasuresException if it is none, or larger
     */
    public Pieces withWornPicture(byte[] png) {
        return new Pieces(
                patterns,
                alignment,
                paper,
                printed,
                plotterWidth,
                rounding,
                materials,
                Optional.of(WornPicture.of(png)));
    }

    /**
     * The pieces themselves: their lines, edges and marks.
     *
     * @return all pieces in all sizes
     */
    public PatternSet patterns() {
        return patterns;
    }

    Optional<Materials> materials() {
        return materials;
    }

    /**
     * The spec table: points of measure, each taken from the drafted lines of every size, mm.
     *
     * @return the table
     */
    public SpecTable specTable() {
        return SpecTable.of(patterns.run());
    }

    /**
     * What is worth a look before cutting, without a table of bodies.
     *
     * @return findings, check by check; empty when all is well
     */
    public List<Finding> check() {
        return check(Optional.empty(), Thresholds.usual());
    }

    /**
     * What is worth a look before cutting: the jumps are compared with those of a table of bodies as well.
     *
     * @param table a table of bodies whose sizes a body dimension orders
     * @return findings, check by check; empty when all is well
     * @throws IllegalArgumentException if the table is none of bodies, or no body dimension orders its sizes
     */
    public List<Finding> check(SizeTable table) {
        return check(Optional.of(table), Thresholds.usual());
    }

    /**
     * What is worth a look before cutting, by limits of one's own.
     *
     * @param table a table of bodies whose sizes a body dimension orders, if any
     * @param thresholds limits of the label
     * @return findings, check by check; empty when all is well
     * @throws IllegalArgumentException if the table is none of bodies, or no body dimension orders its sizes
     */
    public List<Finding> check(Optional<SizeTable> table, Thresholds thresholds) {
        return Findings.of(patterns, CheckedGrade.of(patterns.run()).against(table), thresholds);
    }

    /**
     * What to buy for one pair of sleeves in every size, with usual trimming.
     *
     * @param cloths one or more for each material
     * @return needs per size
     * @throws InvalidMeasuresException if a piece is wider than a cloth, with the width that would do
     */
    public Materials buy(List<Fabric> cloths) {
        return Materials.of(patterns, cloths);
    }

    /**
     * What to buy for an order, all sizes laid together, after a search of the usual effort.
     *
     * @param cloths one or more for each material
     * @param trimming how trimming is bought
     * @param pairs pairs of sleeves per size, 0 to 1000 each; empty for one pair of each size, laid by itself
     * @return needs of the order
     * @throws InvalidMeasuresException if a piece is wider than a cloth, a size is not in the run, or a number is out of range
     */
    public Materials buy(List<Fabric> cloths, Trimming trimming, Map<String, Integer> pairs) {
        return buy(cloths, trimming, pairs, LayEffort.USUAL);
    }

    /**
     * What to buy for an order, all sizes laid together.
     *
     * @param cloths one or more for each material
     * @param trimming how trimming is bought
     * @param pairs pairs of sleeves per size, 0 to 1000 each; empty for one pair of each size, laid by itself
     * @param effort how long good lays are looked for
     * @return needs of the order
     * @throws InvalidMeasuresException if a piece is wider than a cloth, a size is not in the run, or a number is out of range
     */
    public Materials buy(List<Fabric> cloths, Trimming trimming, Map<String, Integer> pairs, LayEffort effort) {
        return buy(cloths, trimming, pairs, effort, LayWatch.UNWATCHED);
    }

    /**
     * What to buy for an order, all sizes laid together, after a search that is watched.
     *
     * @param cloths one or more for each material
     * @param trimming how trimming is bought
     * @param pairs pairs of sleeves per size, 0 to 1000 each; empty for one pair of each size, laid by itself
     * @param effort how long good lays are looked for
     * @param watch is told how far the search is, and may give it up
     * @return needs of the order
     * @throws InvalidMeasuresException if a piece is wider than a cloth, a size is not in the run, or a number is out of range
     * @throws java.util.concurrent.CancellationException if the search was given up
     */
    public Materials buy(
            List<Fabric> cloths, Trimming trimming, Map<String, Integer> pairs, LayEffort effort, LayWatch watch) {
        return pairs.isEmpty()
                ? Materials.of(patterns, cloths, trimming, effort, watch)
                : Materials.ofOrder(patterns, cloths, trimming, pairs, effort, watch);
    }

    /**
     * The nest as SVG at true scale.
     *
     * @param out where the file goes
     * @throws IOException if it cannot be written
     */
    public void writeSvg(OutputStream out) throws IOException {
        write(FileFormat.SVG, out);
    }

    /**
     * The nest as DXF R12, one drawing unit a millimetre.
     *
     * @param out where the file goes
     * @throws IOException if it cannot be written
     */
    public void writeDxf(OutputStream out) throws IOException {
        write(FileFormat.DXF_NEST, out);
    }

    /**
     * Pages at true scale, as PDF.
     *
     * @param out where the file goes
     * @return how many pages there are, as {@link #pages} counts them
     * @throws IOException if it cannot be written
     * @throws InvalidMeasuresException if a piece is wider than the roll, or a size to be printed is not in the run
     */
    public int writePdf(OutputStream out) throws IOException {
        return PdfExport.write(patterns, pdfOptions(), out);
    }

    /**
     * The spec table as comma-separated values.
     *
     * @param out where the file goes
     * @throws IOException if it cannot be written
     */
    public void writeCsv(OutputStream out) throws IOException {
        write(FileFormat.CSV, out);
    }

    /**
     * All pieces for a pen plotter, as HP-GL.
     *
     * @param out where the file goes
     * @throws IOException if it cannot be written
     */
    public void writeHpgl(OutputStream out) throws IOException {
        write(FileFormat.HPGL, out);
    }

    /**
     * Every form in one archive.
     *
     * @param out where the file goes
     * @param first files that go before the others; may be none
     * @throws IOException if it cannot be written
     * @throws InvalidMeasuresException as for {@link #writePdf}
     */
    public void writeZip(OutputStream out, NamedFile... first) throws IOException {
        List<NamedFile> before = new ArrayList<>(List.of(first));
        worn.ifPresent(picture -> before.add(new NamedFile("worn.png", WORN, picture.png())));
        Archive.write(this, before, out);
    }

    /**
     * One form.
     *
     * @param format which
     * @param out where the file goes
     * @throws IOException if it cannot be written
     * @throws InvalidMeasuresException if the pieces cannot be written in this form, with what would work
     */
    public void write(FileFormat format, OutputStream out) throws IOException {
        switch (format) {
            case PDF -> writePdf(out);
            case ZIP -> writeZip(out);
            default -> out.write(bytes(format));
        }
    }

    /** One form, as bytes that nobody else has. */
    byte[] bytes(FileFormat format) throws IOException {
        return switch (format) {
            case SVG -> SvgExport.nest(patterns, alignment, printed);
            case CSV -> SpecCsv.write(patterns.title(), specTable(), rounding);
            case HPGL -> HpglExport.plot(patterns, rollWidth());
            case DXF_NEST -> DxfExport.nest(patterns, alignment);
            case DXF_BLOCKS -> DxfExport.blocks(patterns);
            case PDF, ZIP -> {
                ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
                write(format, bytes);
                yield bytes.toByteArray();
            }
        };
    }

    /**
     * How many pages the PDF has.
     *
     * @return pages with the cover, 1 or more
     * @throws InvalidMeasuresException as for {@link #writePdf}
     */
    public int pages() {
        return PdfExport.pages(patterns, pdfOptions());
    }

    /**
     * The name of the files, made of style and revision.
     *
     * @return without an ending, safe on any disk
     */
    public String fileName() {
        return FileName.of(patterns.title());
    }

    /** What a file holds, and what is unusual this time. */
    Text meaning(FileFormat format) {
        Text usual = Text.of(format.meaning());
        return format == FileFormat.HPGL && rollWidth() > askedRoll()
                ? Text.of("{usual} Here a piece needs {width} mm: it is wider than the roll.")
                        .with("usual", usual)
                        .with("width", Math.round(Math.ceil(rollWidth())))
                : usual;
    }

    private PdfOptions pdfOptions() {
        SewingOrder sewing = SewingOrder.of(patterns);
        PdfOptions options = PdfOptions.on(paper)
                .withSizes(printed)
                .withAlignment(alignment)
                .withSewing(sewing.steps(), sewing.cautions());
        options = materials.map(options::withMaterials).orElse(options);
        return worn.map(options::withWorn).orElse(options);
    }

    /** A roll that is only assumed gives way to the pieces; one that was stated has been checked against them. */
    private double rollWidth() {
        return Math.max(askedRoll(), HpglExport.leastWidth(patterns));
    }

    private double askedRoll() {
        return plotterWidth.orElse(paper instanceof Paper.Roll roll ? roll.width() : USUAL_ROLL);
    }
}
