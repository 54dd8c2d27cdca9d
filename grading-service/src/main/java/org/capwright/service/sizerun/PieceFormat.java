package org.capwright.service.sizerun;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.capwright.FileFormat;
import org.springframework.http.MediaType;

/**
 * A form that the engine writes by itself.
 *
 * @param contentType its media type, with parameters where they say more
 * @param format the form
 */
record PieceFormat(MediaType contentType, FileFormat format) implements SizeRunFormat {

    private static final int USUAL_BYTES = 256 * 1024;
    private static final int BYTES_OF_FIGURES = 8 * 1024;

    @Override
    public MediaType mediaType() {
        return new MediaType(contentType.getType(), contentType.getSubtype());
    }

    @Override
    public String extension() {
        return format.ending();
    }

    @Override
    public String meaning() {
        return format.meaning();
    }

    @Override
    public boolean takesPieces() {
        return format != FileFormat.CSV;
    }

    @Override
    public byte[] render(SizeRunResult result) throws IOException {
        return written(result, format);
    }

    static byte[] written(SizeRunResult result, FileFormat format) throws IOException {
        ByteArrayOutputStream out =
                new ByteArrayOutputStream(format == FileFormat.CSV ? BYTES_OF_FIGURES : USUAL_BYTES);
        if (format == FileFormat.CSV) {
            result.writeCsv(out);
        } else {
            result.pieces().write(format, out);
        }
        return out.toByteArray();
    }
}
