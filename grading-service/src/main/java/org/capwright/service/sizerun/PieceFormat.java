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
        File out = new File();
        switch (format) {
            case CSV -> result.writeCsv(out);
            case PDF -> result.writePdf(out);
            default -> result.pieces().write(format, out);
        }
        return out.toByteArray();
    }

    /** Most files come at one go, as bytes of which the engine keeps none: these are taken as they are. */
    private static final class File extends ByteArrayOutputStream {

        File() {
            super(0);
        }

        @Override
        public synchronized void write(byte[] bytes, int from, int length) {
            if (count == 0 && from == 0 && length == bytes.length) {
                buf = bytes;
                count = length;
            } else {
                super.write(bytes, from, length);
            }
        }

        @Override
        public synchronized byte[] toByteArray() {
            return count == buf.length ? buf : super.toByteArray();
        }
    }
}
