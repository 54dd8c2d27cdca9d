package org.capwright.service.sizerun;

import org.capwright.exchange.hpgl.HpglExport;
import org.capwright.report.Paper;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** The pieces of every size side by side for a pen plotter. */
@Component
@Order(6)
final class HpglFormat implements SizeRunFormat {

    /** The media type that is registered for HP-GL. */
    private static final MediaType HPGL = new MediaType("application", "vnd.hp-hpgl");

    /** A usual roll where the paper asked for is a sheet, mm. */
    private static final double USUAL_ROLL = 900;

    @Override
    public MediaType mediaType() {
        return HPGL;
    }

    @Override
    public String extension() {
        return "plt";
    }

    @Override
    public String meaning() {
        return "All pieces in all sizes side by side for a pen plotter, HP-GL, 40 units to the millimetre: pen 1 cuts, pen 2 marks."
                + " The roll is as wide as plotter or paper asks, or 900 mm, or wider where a piece needs it.";
    }

    @Override
    public String meaning(SizeRunResult result) {
        double width = width(result);
        return width > asked(result)
                ? meaning() + " Here a piece needs " + Math.round(Math.ceil(width)) + " mm: it is wider than the roll."
                : meaning();
    }

    @Override
    public byte[] render(SizeRunResult result) {
        return HpglExport.plot(result.patterns(), width(result));
    }

    /** A roll that was only assumed gives way to the pieces; one that was stated was checked against them when the request was. */
    private static double width(SizeRunResult result) {
        return Math.max(asked(result), HpglExport.leastWidth(result.patterns()));
    }

    private static double asked(SizeRunResult result) {
        Paper paper = result.order().paper();
        return result.order().plotterWidth().orElse(paper instanceof Paper.Roll roll ? roll.width() : USUAL_ROLL);
    }
}
