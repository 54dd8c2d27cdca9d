package org.capwright.batch;

import java.util.List;

/**
 * What became of all lines.
 *
 * @param lines how many there were
 * @param cut how many orders are cut
 * @param notCut how many are not, each with its problem among the errors
 * @param formats of the files of each order
 * @param engine version of the engine
 */
public record BatchSummary(long lines, long cut, long notCut, List<String> formats, String engine) {

    /** Checks that no line is lost or doubled. */
    BatchSummary counted() {
        if (cut + notCut != lines) {
            throw new IllegalStateException(
                    lines + " lines were read, but " + cut + " cut and " + notCut + " not; nothing was replaced.");
        }
        return this;
    }

    String json() {
        return "{\"lines\":" + lines + ",\"cut\":" + cut + ",\"notCut\":" + notCut + ",\"formats\":[\""
                + String.join("\",\"", formats) + "\"],\"engine\":\"" + engine + "\"}\n";
    }
}
