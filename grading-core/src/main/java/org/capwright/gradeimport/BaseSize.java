package org.capwright.gradeimport;

import java.util.List;
import java.util.Optional;
import org.capwright.exchange.ForeignInputException;
import org.capwright.words.Text;

/** Which of the sizes is the base size. */
final class BaseSize {

    private BaseSize() {}

    /** By what the sender says, else by what the file states, else the middle one. */
    static int of(String file, List<String> labels, ForeignOptions options, Optional<String> stated, ImportNotes traces)
            throws ForeignInputException {
        if (options.baseSize().isPresent()) {
            String given = options.baseSize().get().strip();
            int at = position(labels, given);
            if (at < 0) {
                throw new UnknownBaseSizeException(file, given, labels);
            }
            return at;
        }
        if (stated.isPresent()) {
            int at = position(labels, stated.get());
            if (at >= 0) {
                traces.found(0, labels.get(at), Text.of("base size, as the file states"));
                return at;
            }
            traces.leftOut(
                    0,
                    ImportNote.FILE,
                    Text.of("the base size stated, {size}, is not among the sizes")
                            .with("size", ForeignInputException.shown(stated.get())));
        }
        int middle = (labels.size() - 1) / 2;
        traces.assumed(
                0,
                labels.get(middle),
                Text.of("taken for the base size, as it stands in the middle and none is stated"));
        return middle;
    }

    private static int position(List<String> labels, String wanted) {
        for (int i = 0; i < labels.size(); i++) {
            if (labels.get(i).equalsIgnoreCase(wanted.strip())) {
                return i;
            }
        }
        return -1;
    }
}
