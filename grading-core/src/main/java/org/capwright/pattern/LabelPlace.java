package org.capwright.pattern;

import org.capwright.geometry.Box;

/**
 * Where a piece of one size has its words.
 *
 * @param label the words
 * @param piece the box about its net line
 */
record LabelPlace(PieceLabel label, Box piece) {

    /** The block of the words in another size: it grows from the origin of the draft, where fold line and bicep line cross, as that side of the piece does. */
    Box block(Box other) {
        double width = label.width();
        double height = label.lineHeight() * label.lines().size();
        double left = label.topLeft().x();
        double top = label.topLeft().y();
        double across =
                left + width / 2 < 0 ? growth(piece.left(), other.left()) : growth(piece.right(), other.right());
        double up = top - height / 2 < 0 ? growth(piece.bottom(), other.bottom()) : growth(piece.top(), other.top());
        return new Box(across * left, up * (top - height), across * (left + width), up * top);
    }

    private static double growth(double here, double there) {
        return here * there > 0 ? there / here : 1;
    }
}
