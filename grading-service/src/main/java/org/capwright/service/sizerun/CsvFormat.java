package org.capwright.service.sizerun;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.capwright.exchange.table.SpecCsv;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

/** The spec table as comma-separated values. */
@Component
@Order(4)
final class CsvFormat implements SizeRunFormat {

    private static final MediaType CSV = new MediaType("text", "csv");

    /** RFC 7111 and RFC 4180, section 3. */
    private static final MediaType CONTENT = new MediaType(CSV, Map.of("charset", "UTF-8", "header", "present"));

    @Override
    public MediaType mediaType() {
        return CSV;
    }

    @Override
    public MediaType contentType() {
        return CONTENT;
    }

    @Override
    public String extension() {
        return "csv";
    }

    @Override
    public String meaning() {
        return "The spec table, RFC 4180: a header line, then one line per point of measure with its values and jumps.";
    }

    @Override
    public byte[] render(SizeRunResult result) {
        return SpecCsv.write(
                        result.patterns().title(),
                        result.specTable(),
                        result.order().rounding())
                .getBytes(StandardCharsets.UTF_8);
    }
}
