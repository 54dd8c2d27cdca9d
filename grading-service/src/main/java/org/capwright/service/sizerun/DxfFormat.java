package org.capwright.service.sizerun;

import java.io.IOException;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** The pieces as DXF R12, nested or in blocks. */
@Component
@Order(3)
final class DxfFormat implements SizeRunFormat {

    private static final MediaType DXF = new MediaType("image", "vnd.dxf");

    @Override
    public MediaType mediaType() {
        return DXF;
    }

    @Override
    public String extension() {
        return "dxf";
    }

    @Override
    public String meaning() {
        return "The pieces as DXF R12, one drawing unit a millimetre; all sizes as a nest, or one block per piece and size, as"
                + " layout asks.";
    }

    @Override
    public byte[] render(SizeRunResult result) throws IOException {
        return PieceFormat.written(result, result.order().dxf());
    }
}
