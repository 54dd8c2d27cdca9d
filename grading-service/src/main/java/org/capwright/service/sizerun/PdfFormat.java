package org.capwright.service.sizerun;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.capwright.pattern.SewingOrder;
import org.capwright.report.PdfExport;
import org.capwright.report.PdfOptions;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** The pieces on paper at true scale. */
@Component
@Order(5)
final class PdfFormat implements SizeRunFormat {

    private static final int USUAL_BYTES = 256 * 1024;

    @Override
    public MediaType mediaType() {
        return MediaType.APPLICATION_PDF;
    }

    @Override
    public String extension() {
        return "pdf";
    }

    @Override
    public String meaning() {
        return "The pieces at true scale on sheets to be glued together, or on a roll, as paper asks, with a cover.";
    }

    @Override
    public byte[] render(SizeRunResult result) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream(USUAL_BYTES);
        PdfExport.write(result.patterns(), options(result), out);
        return out.toByteArray();
    }

    /** How many pages the file would have. */
    static int pages(SizeRunResult result) {
        return PdfExport.pages(result.patterns(), options(result));
    }

    private static PdfOptions options(SizeRunResult result) {
        SizeRunRequest order = result.order();
        SewingOrder sewing = SewingOrder.of(result.patterns());
        PdfOptions options = PdfOptions.on(order.paper())
                .withSizes(order.printed())
                .withAlignment(order.alignment())
                .withSewing(sewing.steps(), sewing.cautions());
        return result.materials().map(options::withMaterials).orElse(options);
    }
}
