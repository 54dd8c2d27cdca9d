package org.capwright.service.sizerun;

import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Locale;
import org.springframework.http.ContentDisposition;

/** File names for answers: letters, digits and hyphens, safe in any header and on any disk. */
final class FileNames {

    private static final int LONGEST = 60;

    private FileNames() {}

    static String base(SizeRunRequest order) {
        return words(order.name()) + "-rev-" + words(order.revision()) + "-size-run";
    }

    static String disposition(SizeRunRequest order, String extension) {
        String name = base(order) + "." + extension;
        ContentDisposition.Builder builder =
                extension.equals("json") ? ContentDisposition.inline() : ContentDisposition.attachment();
        boolean ascii = name.chars().allMatch(c -> c < 0x80);
        return (ascii ? builder.filename(name) : builder.filename(name, StandardCharsets.UTF_8))
                .build()
                .toString();
    }

    /** Letters and digits of any script; whatever lies between becomes one hyphen. */
    private static String words(String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
        StringBuilder name = new StringBuilder();
        plain.codePoints().limit(LONGEST).forEach(c -> {
            if (Character.isLetterOrDigit(c)) {
                name.appendCodePoint(c);
            } else if (Character.getType(c) == Character.NON_SPACING_MARK
                    || Character.getType(c) == Character.COMBINING_SPACING_MARK) {
                name.appendCodePoint(c);
            } else if (!name.isEmpty() && name.charAt(name.length() - 1) != '-') {
                name.append('-');
            }
        });
        while (!name.isEmpty() && name.charAt(name.length() - 1) == '-') {
            name.setLength(name.length() - 1);
        }
        return name.isEmpty() ? "sleeve" : name.toString();
    }
}
