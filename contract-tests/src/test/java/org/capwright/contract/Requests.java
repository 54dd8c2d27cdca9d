package org.capwright.contract;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;

/** Request bodies that the tests send. */
final class Requests {

    private Requests() {}

    /** The example of the README: the gown of the costume workshop. */
    static String choirGown() {
        return example("choir-gown.json");
    }

    /** The gown for one singer of the choir. */
    static String madeToMeasure() {
        return example("made-to-measure.json");
    }

    /** A size table of a workshop's own. */
    static String sizeTable() {
        return example("size-table.json");
    }

    private static String example(String name) {
        try {
            return Files.readString(RunningService.root().resolve("examples").resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The request that the interface was agreed on: no name, no table, one allowance for all. */
    static final String AGREED = """
            {"units":"cm","baseSize":"40","sizes":["36","38","40","42","44"],
             "sleeve":{"bicep":36,"length":60,"capHeight":13.5,"capOutward":1.9,"capInward":1.2,"armhole":45},
             "overlay":{"rise":14,"length":34,"hem":"vee","frontGap":6,"backGap":6,"pleats":{"count":8,"kind":"knife"}},
             "underSleeve":{"elbow":28,"wrist":19},
             "grade":{"bicep":1.2,"length":0.5,"capHeight":0.4,"armhole":[1.6,1.6,1.8,1.8]},
             "sizeTable":null,"seamAllowance":1.0,"align":"underarm"}
            """;

    /** The agreed request with one piece of its text replaced. */
    static String agreedWith(String old, String replacement) {
        if (!AGREED.contains(old)) {
            throw new IllegalArgumentException(old);
        }
        return AGREED.replace(old, replacement);
    }
}
