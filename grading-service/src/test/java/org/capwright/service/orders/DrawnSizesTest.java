package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.capwright.words.Language;
import org.junit.jupiter.api.Test;

/** Files of a size are drawn once, as long as they are remembered. */
class DrawnSizesTest {

    private static final List<String> PDF = List.of("pdf");

    private final DrawnSizes sizes = new DrawnSizes();
    private final List<DrawnSizes.Size> drawn = new ArrayList<>();

    private List<PackedFile> get(DrawnSizes.Size size) {
        return sizes.get(size, () -> {
            drawn.add(size);
            byte[] bytes = new byte[1 << 20];
            new Random(drawn.size()).nextBytes(bytes);
            return List.of(PackedFile.of(new DrawnFile("plt", bytes)));
        });
    }

    private static DrawnSizes.Size size(String label) {
        return new DrawnSizes.Size("choir", "a", 1, label, Language.ENGLISH, PDF);
    }

    @Test
    void whateverIsWrittenOnTheSheetsMakesAnotherSet() {
        List<DrawnSizes.Size> different = List.of(
                size("38"),
                size("40"),
                new DrawnSizes.Size("opera", "a", 1, "38", Language.ENGLISH, PDF),
                new DrawnSizes.Size("choir", "b", 1, "38", Language.ENGLISH, PDF),
                new DrawnSizes.Size("choir", "a", 2, "38", Language.ENGLISH, PDF),
                new DrawnSizes.Size("choir", "a", 1, "38", Language.find("fr").orElseThrow(), PDF),
                new DrawnSizes.Size("choir", "a", 1, "38", Language.ENGLISH, List.of("pdf", "dxf")));
        different.forEach(this::get);
        different.forEach(this::get);
        assertEquals(different, drawn);
        assertNotEquals(
                get(size("38")).get(0).file().sha256(),
                get(size("40")).get(0).file().sha256());
    }

    @Test
    void theSizeThatWasAskedForLongestAgoIsForgottenFirst() {
        get(size("38"));
        for (int i = 0; i < 20; i++) {
            get(size("other " + i));
            get(size("38"));
        }
        assertEquals(1, drawn.stream().filter(size("38")::equals).count());
        get(size("other 0"));
        assertEquals(2, drawn.stream().filter(size("other 0")::equals).count());
    }
}
