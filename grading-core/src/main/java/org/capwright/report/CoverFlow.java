package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.drawing.pdf.PdfCanvas;
import org.capwright.drawing.pdf.PdfFile;

/**
 * Lets bands run down the columns of the cover pages.
 *
 * @param columnWidth width of a column, mm
 * @param columns columns side by side on a page
 * @param height height of a page between its margins, mm
 */
record CoverFlow(double columnWidth, int columns, double height) {

    private static final double BETWEEN = 10;
    private static final double USUAL = 190;

    /** A band and where it stands on its page; the upper left corner is the origin. */
    private record Standing(Band band, double left, double top) {}

    static CoverFlow within(double width, double height) {
        int columns = Math.max(1, (int) Math.floor((width + BETWEEN) / (USUAL + BETWEEN) + 1e-9));
        return new CoverFlow((width - (columns - 1) * BETWEEN) / columns, columns, height);
    }

    double width() {
        return columns * (columnWidth + BETWEEN) - BETWEEN;
    }

    /** Draws the bands, each page on a canvas of its own whose origin is the upper left corner between the margins. */
    List<PdfCanvas> pages(List<Band> bands, PdfFile file) {
        List<List<Standing>> pages = standing(bands);
        List<PdfCanvas> drawn = new ArrayList<>(pages.size());
        for (List<Standing> page : pages) {
            PdfCanvas canvas = file.canvas();
            for (Standing standing : page) {
                standing.band.drawing().draw(canvas, standing.left, standing.top);
            }
            drawn.add(canvas);
        }
        return drawn;
    }

    int count(List<Band> bands) {
        return standing(bands).size();
    }

    private List<List<Standing>> standing(List<Band> bands) {
        List<List<Standing>> pages = new ArrayList<>();
        pages.add(new ArrayList<>());
        int column = 0;
        double down = 0;
        for (int i = 0; i < bands.size(); i++) {
            double needed = 0;
            for (int j = i; j < bands.size(); j++) {
                needed += bands.get(j).height();
                if (!bands.get(j).withNext()) {
                    break;
                }
            }
            if (down > 0 && down + needed > height + 1e-9) {
                down = 0;
                column++;
                if (column == columns) {
                    column = 0;
                    pages.add(new ArrayList<>());
                }
                Optional<Band> header = bands.get(i).header();
                if (header.isPresent()) {
                    down = stand(pages, header.get(), column, down);
                }
            }
            down = stand(pages, bands.get(i), column, down);
        }
        return pages;
    }

    private double stand(List<List<Standing>> pages, Band band, int column, double down) {
        pages.get(pages.size() - 1).add(new Standing(band, column * (columnWidth + BETWEEN), -down));
        return down + band.height();
    }
}
