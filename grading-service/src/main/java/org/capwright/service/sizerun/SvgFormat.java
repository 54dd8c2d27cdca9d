package org.capwright.service.sizerun;

import org.capwright.report.SvgExport;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** The nest as a drawing. */
@Component
@Order(2)
final class SvgFormat implements SizeRunFormat {

    private static final MediaType SVG = new MediaType("image", "svg+xml");

    @Override
    public MediaType mediaType() {
        return SVG;
    }

    @Override
    public String extension() {
        return "svg";
    }

    @Override
    public String meaning() {
        return "The nest as SVG 1.1 at true scale, one user unit a millimetre, with a test square.";
    }

    @Override
    public byte[] render(SizeRunResult result) {
        return SvgExport.nest(result.patterns(), result.order().alignment());
    }
}
