package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Checks a DXF R12 (AC1009) file for faults that readers pass over or choke on: undefined layers, duplicate blocks, names too long, numbers that are none,
 * polylines of one vertex or without their flag, sections out of order, strings too long, entities of later versions, line endings, 7-bit ASCII, extents that are not
 * true.
 *
 * <p>True extents are the box of all coordinates in the model, inserts resolved; of a text its insertion point counts. Files with arcs, bulges or turned
 * inserts are not checked for extents.
 */
public final class DxfLinter {

    /** No more findings than this are reported. */
    public static final int MOST_FINDINGS = 1000;

    private DxfLinter() {}

    /**
     * Checks a file.
     *
     * @param file the whole file
     * @return what is wrong, by line; empty for a sound file; at most {@link #MOST_FINDINGS}
     */
    public static List<DxfFinding> check(byte[] file) {
        List<DxfFinding> findings = new ArrayList<>();
        DxfStructure structure = new DxfStructure(finding -> {
            if (findings.size() < MOST_FINDINGS) {
                findings.add(finding);
            }
        });
        structure.check(new DxfLexer(file, structure::report).records());
        findings.sort(Comparator.comparingInt(DxfFinding::line).thenComparing(DxfFinding::fault));
        return List.copyOf(findings);
    }
}
