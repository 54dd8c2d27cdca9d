package org.capwright.gradeimport;

import java.util.List;
import java.util.Optional;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.geometry.Point;
import org.capwright.words.Text;

/**
 * An outline that may be the sleeve of a size.
 *
 * @param file name of its file
 * @param label the size, where it is told
 * @param name what piece it is
 * @param outline sew line if there is one, else cut line, else the only line
 * @param marks straight lines of the same piece
 * @param how where size and name were found, in words
 */
record SizedPiece(
        String file, Optional<String> label, PieceName name, Outline outline, List<DrawnLine> marks, List<Text> how) {

    /** The same piece without the notches in its outline; itself where it has none. */
    SizedPiece withoutNotches() {
        List<Point> points = Notches.without(outline.points(), SleeveFinder.scale(this));
        if (points.size() == outline.points().size()) {
            return this;
        }
        List<Text> more = new java.util.ArrayList<>(how);
        more.add(Text.of("notches in its outline are passed over"));
        return new SizedPiece(file, label, name, outline.along(points), marks, List.copyOf(more));
    }

    SizedPiece labelled(String size, Text where) {
        List<Text> more = new java.util.ArrayList<>(how);
        more.add(where);
        return new SizedPiece(file, Optional.of(size), name, outline, marks, List.copyOf(more));
    }
}
