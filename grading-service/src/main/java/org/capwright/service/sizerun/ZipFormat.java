package org.capwright.service.sizerun;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.capwright.FileFormat;
import org.capwright.NamedFile;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** Every form of the run in one archive, the JSON of this service first. */
@Component
@Order(9)
final class ZipFormat implements SizeRunFormat {

    private static final MediaType ZIP = new MediaType("application", "zip");

    private final JsonFormat json;

    ZipFormat(JsonFormat json) {
        this.json = json;
    }

    @Override
    public MediaType mediaType() {
        return ZIP;
    }

    @Override
    public String extension() {
        return FileFormat.ZIP.ending();
    }

    @Override
    public String meaning() {
        return FileFormat.ZIP.meaning();
    }

    @Override
    public byte[] render(SizeRunResult result) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
        result.pieces().writeZip(bytes, new NamedFile(json.extension(), json.meaning(), json.render(result)));
        return bytes.toByteArray();
    }
}
