package org.capwright.report;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.capwright.drawing.pdf.PdfCanvas;
import org.capwright.drawing.pdf.PdfFile;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Violation;
import org.capwright.words.Language;
import org.capwright.words.Text;

/**
 * Prints a pattern at true scale: a cover, and the pieces on sheets to be glued together or on one page from a roll; or one page for a projector. Lengths on paper are those of the pattern;
 * the file asks the print dialog not to scale. The same pattern and options give the same bytes.
 */
public final class PdfExport {

    /** The name in the file of what helps to put pages together and is the same on each. */
    private static final String FURNITURE = "F";

    private final PatternSet set;
    private final PdfOptions options;
    private final List<Block> blocks;
    private final Language language;
    private final PdfFile file;

    private PdfExport(PatternSet set, PdfOptions options) {
        this.set = set;
        this.options = options;
        language = set.title().language();
        file = new PdfFile(language);
        this.blocks = Block.of(set, chosen(set, options.sizes()), options.alignment());
    }

    /**
     * Writes a pattern as PDF.
     *
     * @param set the pieces in all sizes
     * @param options paper, sizes, words for the cover
     * @param out where the file goes; it is not closed
     * @return how many pages it has, 1 or more
     * @throws IOException if it cannot be written
     * @throws InvalidMeasuresException if the paper is too narrow for the pieces (pointer {@code /paper/width}) or a size is not in the run
     */
    public static int write(PatternSet set, PdfOptions options, OutputStream out) throws IOException {
        Paper paper = options.paper();
        if (paper instanceof Paper.Projection projection) {
            return new PdfExport(set, options).projected(projection, out);
        }
        if (paper instanceof Paper.Roll roll) {
            return new PdfExport(set, options).onRoll(roll, out);
        }
        Paper.Sheets sheets = (Paper.Sheets) paper;
        return write(set, options, sheets, blocks -> Tiling.fewest(blocks, sheets), out);
    }

    /**
     * How many pages a file has, without writing it.
     *
     * @param set the pieces in all sizes
     * @param options as for writing
     * @return pages with the cover, 1 or more
     * @throws InvalidMeasuresException as for writing
     */
    public static int pages(PatternSet set, PdfOptions options) {
        PdfExport export = new PdfExport(set, options);
        Paper paper = options.paper();
        if (paper instanceof Paper.Projection projection) {
            Projected.of(export.blocks, projection);
            return 1;
        }
        if (paper instanceof Paper.Roll roll) {
            CoverFlow flow = coverOn(Paper.A4);
            Tiling tiling = export.rollTiling(roll, flow, new Cover(set, options, export.blocks, flow.columnWidth()));
            // The first row holds the cover, pieces or none.
            int head = 0;
            for (int column = 0; column < tiling.columns(); column++) {
                head += tiling.needs(0, column) ? 0 : 1;
            }
            return tiling.count() + head;
        }
        Paper.Sheets sheets = (Paper.Sheets) paper;
        Tiling tiling = Tiling.fewest(export.blocks, sheets);
        CoverFlow flow = coverOn(sheets);
        Cover cover = new Cover(set, options, export.blocks, flow.columnWidth());
        return flow.count(cover.bands(Optional.of(new PageMap(tiling, false)))) + tiling.count();
    }

    private static CoverFlow coverOn(Paper.Sheets paper) {
        return CoverFlow.within(paper.width() - 2 * Paper.MARGIN, paper.height() - 2 * Paper.MARGIN);
    }

    /** Prints on pages already laid out. */
    static int write(PatternSet set, PdfOptions options, Paper.Sheets paper, Layout layout, OutputStream out)
            throws IOException {
        PdfExport export = new PdfExport(set, options);
        return export.onSheets(paper, layout.of(export.blocks), out);
    }

    /** Lays blocks out on pages. */
    interface Layout {
        /**
         * Lays out.
         *
         * @param blocks what is printed
         * @return the pages
         */
        Tiling of(List<Block> blocks);
    }

    static List<Integer> chosen(PatternSet set, List<String> labels) {
        List<String> all = set.run().sizes().stream().map(size -> size.label()).toList();
        List<Integer> chosen = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (labels.isEmpty() || labels.contains(all.get(i))) {
                chosen.add(i);
            }
        }
        List<Violation> unknown = labels.stream()
                .filter(label -> !all.contains(label))
                .map(label -> Violation.of(
                        Option.PAPER_SIZES,
                        Text.of("there is no size {size}; the sizes of the run are {sizes}")
                                .with("size", label)
                                .with("sizes", Text.names(all))))
                .toList();
        if (!unknown.isEmpty()) {
            throw new InvalidMeasuresException(unknown);
        }
        return chosen;
    }

    private int onSheets(Paper.Sheets paper, Tiling tiling, OutputStream out) throws IOException {
        CoverFlow flow = coverOn(paper);
        Cover cover = new Cover(set, options, blocks, flow.columnWidth());
        List<PdfFile.Page> pages = new ArrayList<>();
        for (PdfCanvas content : flow.pages(cover.bands(Optional.of(new PageMap(tiling, false))), file)) {
            pages.add(new PdfFile.Page(paper.width(), paper.height(), Paper.MARGIN, content));
        }
        file.bookmark(language.say("Cover"), 0);
        pages.addAll(tilePages(tiling, List.of(), flow, pages.size()));
        return save(pages, List.of(), out);
    }

    private int onRoll(Paper.Roll roll, OutputStream out) throws IOException {
        CoverFlow flow = coverOn(Paper.A4);
        Cover cover = new Cover(set, options, blocks, flow.columnWidth());
        Tiling tiling = rollTiling(roll, flow, cover);
        Optional<PageMap> map = tiling.single() ? Optional.empty() : Optional.of(new PageMap(tiling, true));
        List<PdfCanvas> drawn = flow.pages(cover.bands(map), file);
        file.bookmark(language.say("Cover"), 0);
        return save(tilePages(tiling, drawn, flow, 0), drawn, out);
    }

    private int projected(Paper.Projection projection, OutputStream out) throws IOException {
        Projected projected = Projected.of(blocks, projection);
        file.add(projected.page(file, projection.ground(), words(), language));
        for (Block block : blocks) {
            file.bookmark(block.words(language), 0);
        }
        return finish(out);
    }

    /** The cover lies on the roll too, above the pieces. A map is of use only where the roll is printed as several pages. */
    private Tiling rollTiling(Paper.Roll roll, CoverFlow flow, Cover cover) {
        Tiling tiling = belowPanels(roll, flow, flow.count(cover.bands(Optional.empty())));
        return tiling.single()
                ? tiling
                : belowPanels(roll, flow, flow.count(cover.bands(Optional.of(new PageMap(tiling, true)))));
    }

    private Tiling belowPanels(Paper.Roll roll, CoverFlow flow, int panels) {
        double head = Math.ceil((double) panels / beside(roll.width() - 2 * Paper.MARGIN, flow))
                * (flow.height() + Sheet.GAP);
        return Tiling.roll(blocks, roll, head, flow.width());
    }

    private static int beside(double width, CoverFlow flow) {
        return Math.max(1, (int) Math.floor((width + Sheet.GAP) / (flow.width() + Sheet.GAP)));
    }

    private List<PdfFile.Page> tilePages(Tiling tiling, List<PdfCanvas> panels, CoverFlow flow, int before) {
        if (!tiling.single()) {
            PdfCanvas furniture = file.canvas();
            SheetFurniture.drawShared(furniture, tiling, words(), language);
            Box sheet = new Box(0, -tiling.printedHeight(), tiling.printedWidth(), 0);
            file.form(FURNITURE, furniture, sheet.grown(Sheet.RIM));
        }
        List<PdfFile.Page> pages = new ArrayList<>();
        Map<Integer, Integer> begins = new TreeMap<>();
        for (int row = 0; row < tiling.rows(); row++) {
            for (int column = 0; column < tiling.columns(); column++) {
                boolean head = !panels.isEmpty() && row == 0;
                if (tiling.needs(row, column) || head) {
                    int page = before + pages.size();
                    Box printed = tiling.printed(row, column);
                    tiling.sheet().placed().stream()
                            .filter(placed -> placed.bounds().meets(printed))
                            .forEach(placed -> begins.putIfAbsent(placed.block().position(), page));
                    pages.add(tilePage(tiling, row, column, panels, flow));
                }
            }
        }
        begins.forEach((position, page) -> file.bookmark(name(position), page));
        return pages;
    }

    private String words() {
        return Text.of("{style}, revision {revision}, {sizes}")
                .with("style", set.title().style())
                .with("revision", set.title().revision())
                .with("sizes", SizeNames.named(blocks.get(0)))
                .in(language);
    }

    private String name(int position) {
        return blocks.stream()
                .filter(block -> block.position() == position)
                .findFirst()
                .orElseThrow()
                .words(language);
    }

    private PdfFile.Page tilePage(Tiling tiling, int row, int column, List<PdfCanvas> panels, CoverFlow flow) {
        PdfCanvas canvas = file.canvas();
        if (!tiling.single()) {
            canvas.form(FURNITURE);
            SheetFurniture.draw(canvas, tiling, row, column, language);
        }
        Box printed = tiling.printed(row, column);
        canvas.save().box(0, -printed.height(), printed.width(), printed.height());
        canvas.clip();
        canvas.move(-printed.left(), -printed.top());
        int beside = beside(tiling.printedWidth(), flow);
        for (int i = 0; i < panels.size(); i++) {
            double x = i % beside * (flow.width() + Sheet.GAP);
            double y = -(i / beside) * (flow.height() + Sheet.GAP);
            if (new Box(x, y - flow.height(), x + flow.width(), y).meets(printed)) {
                form(canvas, new Point(x, y), "C" + i);
            }
        }
        for (Sheet.Placed placed : tiling.sheet().placed()) {
            if (placed.bounds().grown(Sheet.RIM).meets(printed)) {
                form(canvas, placed.at(), "P" + placed.block().position());
            }
        }
        canvas.restore();
        return new PdfFile.Page(tiling.pageWidth(), tiling.pageHeight(), Paper.MARGIN, canvas);
    }

    private static void form(PdfCanvas canvas, Point at, String name) {
        canvas.save().move(at.x(), at.y());
        canvas.form(name).restore();
    }

    private int save(List<PdfFile.Page> pages, List<PdfCanvas> panels, OutputStream out) throws IOException {
        DrawnWords words = new DrawnWords(language);
        for (int i = 0; i < blocks.size(); i++) {
            PdfCanvas canvas = file.canvas();
            PieceDrawing.draw(canvas, blocks.get(i), words);
            file.form("P" + i, canvas, blocks.get(i).bounds().grown(Sheet.RIM + 2));
        }
        for (int i = 0; i < panels.size(); i++) {
            file.form("C" + i, panels.get(i), new Box(-5, -300, 300, 5));
        }
        pages.forEach(file::add);
        return finish(out);
    }

    private int finish(OutputStream out) throws IOException {
        options.worn().ifPresent(worn -> file.picture(Cover.WORN, worn.image()));
        List<String> sizes = blocks.get(0).layers().stream()
                .map(layer -> layer.piece().size())
                .toList();
        String subject = Text.of("Sewing pattern at true scale, revision {revision}, {sizes}")
                .with("revision", set.title().revision())
                .with(
                        "sizes",
                        Text.of(blocks.get(0).nested() ? "sizes {sizes}" : "size {sizes}")
                                .with("sizes", Text.names(sizes)))
                .in(language);
        List<String> run = set.run().sizes().stream().map(size -> size.label()).toList();
        return file.save(set.title().style(), subject, run, options.created(), PdfFile.Scale.TRUE, out);
    }
}
