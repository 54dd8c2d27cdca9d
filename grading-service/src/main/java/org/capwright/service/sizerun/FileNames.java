package org.capwright.service.sizerun;

import java.nio.charset.StandardCharsets;
import org.capwright.exchange.FileName;
import org.capwright.json.style.SizeRunRequest;
import org.springframework.http.ContentDisposition;

/** Names the file of an answer in its headers. */
final class FileNames {

    private FileNames() {}

    static String disposition(SizeRunRequest order, String extension) {
        String name = FileName.of(order.title()) + "." + extension;
        ContentDisposition.Builder builder =
                extension.equals("json") ? ContentDisposition.inline() : ContentDisposition.attachment();
        boolean ascii = name.chars().allMatch(c -> c < 0x80);
        return (ascii ? builder.filename(name) : builder.filename(name, StandardCharsets.UTF_8))
                .build()
                .toString();
    }
}
