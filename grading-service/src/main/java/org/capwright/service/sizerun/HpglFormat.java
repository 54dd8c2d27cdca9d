package org.capwright.service.sizerun;

import org.capwright.drawing.pdf.Paper;
import org.capwright.exchange.hpgl.HpglExport;
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
                + " The roll is as wide as paper asks, or 900 mm.";
    }

    @Override
    public byte[] render(SizeRunResult result) {
        Paper paper = result.order().paper();
        return HpglExport.plot(result.patterns(), paper instanceof Paper.Roll roll ? roll.width() : USUAL_ROLL);
    }
}
