package org.capwright.service.orders;

import java.util.List;
import java.util.function.Supplier;
import org.capwright.service.http.load.Remembered;
import org.capwright.words.Language;

/** The files of sizes that were ordered last. They are the same in every order of the size, so they are drawn once; what is kept of them here is bounded. Safe for many threads. */
final class DrawnSizes {

    private static final int MOST_BYTES = 8 << 20;

    private final Remembered<Size, List<PackedFile>> files =
            new Remembered<>(MOST_BYTES, (size, drawn) -> weight(drawn));

    /**
     * A size of a revision that never changes.
     *
     * @param tenant whose style
     * @param style fingerprint of the style's body
     * @param revision number of the revision, which is written on the sheets
     * @param label name of the size
     * @param language what is said on the sheets
     * @param formats of the files
     */
    record Size(String tenant, String style, int revision, String label, Language language, List<String> formats) {}

    /** Files that were drawn before, or else are drawn now. */
    List<PackedFile> get(Size size, Supplier<List<PackedFile>> drawing) {
        return files.find(size).orElseGet(() -> {
            List<PackedFile> drawn = drawing.get();
            files.keep(size, drawn);
            return drawn;
        });
    }

    private static int weight(List<PackedFile> files) {
        return files.stream().mapToInt(file -> file.packed().length).sum();
    }
}
