package org.capwright.exchange.dxf;

import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/** What stands between one group code 0 and the next: positions of its pairs. */
record DxfEntity(DxfTags tags, String type, int from, int to) {

    int line() {
        return tags.line(from);
    }

    /** Position of the first pair of a code, or -1. */
    int find(int code) {
        for (int i = from + 1; i < to; i++) {
            if (tags.code(i) == code) {
                return i;
            }
        }
        return -1;
    }

    String text(int code) {
        int at = find(code);
        return at < 0 ? "" : tags.text(at);
    }

    double number(int code) throws ForeignInputException {
        int at = find(code);
        if (at < 0) {
            throw tags.error(
                    line(),
                    Text.of("{entity} without group code {code}")
                            .with("entity", type)
                            .with("code", code));
        }
        return tags.number(at);
    }

    double number(int code, double otherwise) throws ForeignInputException {
        int at = find(code);
        return at < 0 ? otherwise : tags.number(at);
    }

    int whole(int code, int otherwise) throws ForeignInputException {
        int at = find(code);
        return at < 0 ? otherwise : tags.whole(at);
    }

    String layer() {
        String layer = text(8);
        return layer.isEmpty() ? "0" : layer;
    }

    /** Its own colour number, 0 where it takes that of its layer or block. */
    int colour() throws ForeignInputException {
        int colour = Math.abs(whole(62, 0));
        return colour < 256 ? colour : 0;
    }

    /** Whether it is seen from behind, so that its own x runs to the left: extrusion (0, 0, -1). */
    boolean seenFromBehind() throws ForeignInputException {
        return number(230, 1) < 0;
    }

    ForeignInputException error(Text reason) {
        return tags.error(
                line(), Text.of("{entity}: {reason}").with("entity", type).with("reason", reason));
    }
}
