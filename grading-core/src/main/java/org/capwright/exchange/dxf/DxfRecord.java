package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What stands between one group code 0 and the next.
 *
 * @param line line of its group code 0
 * @param type its value
 * @param pairs the pairs that follow
 */
record DxfRecord(int line, String type, List<Pair> pairs) {

    /** A group code and its value; the line is that of the value. */
    record Pair(int line, int code, String value) {}

    static DxfRecord at(int line, String type) {
        return new DxfRecord(line, type, new ArrayList<>());
    }

    Optional<Pair> find(int code) {
        for (Pair pair : pairs) {
            if (pair.code == code) {
                return Optional.of(pair);
            }
        }
        return Optional.empty();
    }

    String text(int code) {
        return find(code).map(Pair::value).orElse("");
    }

    OptionalDouble number(int code) {
        return find(code).map(pair -> finite(pair.value)).orElse(OptionalDouble.empty());
    }

    static OptionalDouble finite(String value) {
        try {
            double number = Double.parseDouble(value.strip());
            return Double.isFinite(number) ? OptionalDouble.of(number) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }
}
