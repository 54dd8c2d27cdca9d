package org.capwright.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.geometry.Curve;
import org.capwright.measure.Dimension;
import org.capwright.measure.Dimensions;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Violation;

/**
 * The cap of a sleeve down to the bicep line, both halves, each drawn to the right of the fold line (x ≥ 0). Guaranteed to be immutable.
 *
 * @param front cap line of the front half
 * @param back cap line of the back half; the same object as {@code front} where the halves are equal
 */
public record BaseSleeve(CapLine front, CapLine back) {

    private static final List<Dimension> DIMENSIONS = List.of(Dimension.values());

    /** Outward displacement where none is given, as a share of the greatest that the cap can take. Common practice, no source. */
    static final double USUAL_OUTWARD = 0.5;

    /** Inward displacement where none is given, as a share of the greatest that the cap can take. Common practice, no source. */
    static final double USUAL_INWARD = 0.35;

    /**
     * Drafts both halves from dimensions.
     *
     * @param dimensions with bicep and cap height; front and back dimensions where the halves differ
     * @return the base sleeve
     * @throws InvalidMeasuresException if no cap line can be drawn, with the ranges that would work
     */
    public static BaseSleeve draft(Dimensions dimensions) {
        return draft(dimensions, dimensions.get(Dimension.CAP_HEIGHT), 0);
    }

    static BaseSleeve draft(Dimensions dimensions, double capHeight, double extraWidth) {
        double frontWidth = frontWidth(dimensions);
        double backWidth = dimensions.get(Dimension.BICEP) - frontWidth;
        if (!(backWidth > 0)) {
            throw new InvalidMeasuresException(Violation.lengthAbove(
                    Dimension.FRONT_WIDTH,
                    "the front half leaves no width for the back",
                    frontWidth,
                    dimensions.get(Dimension.BICEP) - Dimension.FRONT_WIDTH.least()));
        }
        Half front = Half.front(dimensions, frontWidth + extraWidth, capHeight);
        Half back = Half.back(dimensions, backWidth + extraWidth, capHeight);
        if (front.sameAs(back)) {
            CapLine both = front.draft();
            return new BaseSleeve(both, both);
        }
        return new BaseSleeve(front.draft(), back.draft());
    }

    static double frontWidth(Dimensions dimensions) {
        return dimensions.getOr(Dimension.FRONT_WIDTH, dimensions.get(Dimension.BICEP) / 2);
    }

    /** The measures of one half and where they stand in the request. */
    record Half(
            double width,
            double capHeight,
            double outward,
            double inward,
            Subject outwardSubject,
            Subject inwardSubject) {

        static Half front(Dimensions dimensions, double width, double capHeight) {
            return of(dimensions, width, capHeight, Dimension.FRONT_CAP_OUTWARD, Dimension.FRONT_CAP_INWARD);
        }

        static Half back(Dimensions dimensions, double width, double capHeight) {
            return of(dimensions, width, capHeight, Dimension.BACK_CAP_OUTWARD, Dimension.BACK_CAP_INWARD);
        }

        private static Half of(
                Dimensions dimensions, double width, double capHeight, Dimension outward, Dimension inward) {
            double limit = Math.sqrt(width * width + capHeight * capHeight) / 4 * capHeight / width;
            Dimension outwardGiven = dimensions.has(outward) ? outward : Dimension.CAP_OUTWARD;
            Dimension inwardGiven = dimensions.has(inward) ? inward : Dimension.CAP_INWARD;
            return new Half(
                    width,
                    capHeight,
                    dimensions.getOr(outwardGiven, USUAL_OUTWARD * limit),
                    dimensions.getOr(inwardGiven, USUAL_INWARD * limit),
                    outwardGiven,
                    inwardGiven);
        }

        boolean sameAs(Half other) {
            return width == other.width && outward == other.outward && inward == other.inward;
        }

        Optional<CapLine> find() {
            return CapLine.find(width, capHeight, outward, inward);
        }

        CapLine draft() {
            return find().orElseThrow(() -> new InvalidMeasuresException(
                    CapLine.violations(width, capHeight, outward, inward, outwardSubject, inwardSubject)));
        }
    }

    /**
     * Whether front and back are the same, so that the piece can be cut on the fold.
     *
     * @return true for equal halves
     */
    public boolean symmetrical() {
        return front == back;
    }

    /**
     * Width on the bicep line, underarm point to underarm point.
     *
     * @return millimetres
     */
    public double bicep() {
        return front.width() + back.width();
    }

    /**
     * Height of the cap over the bicep line.
     *
     * @return millimetres
     */
    public double capHeight() {
        return front.capHeight();
    }

    /**
     * Length of the whole cap line.
     *
     * @return millimetres
     */
    public double capLength() {
        return front.length() + back.length();
    }

    /**
     * The whole cap line.
     *
     * @return from the front underarm point (negative x) over the apex to the back underarm point
     */
    public Curve capLine() {
        return whole(front.curve(), back.curve());
    }

    /** Joins two half lines that start on the fold: the front one is mirrored to the left and run through backwards. */
    static Curve whole(Curve frontHalf, Curve backHalf) {
        return frontHalf.mirroredBack().joinedTo(backHalf);
    }

    static List<Violation> outOfPlausibleRange(Dimensions dimensions) {
        List<Violation> found = new ArrayList<>();
        for (Dimension dimension : DIMENSIONS) {
            if (!dimensions.has(dimension)) {
                continue;
            }
            double value = dimensions.get(dimension);
            if (!(value >= dimension.least() && value <= dimension.greatest())) {
                found.add(Violation.lengthOutside(
                        dimension, "outside what a sleeve can have", value, dimension.least(), dimension.greatest()));
            }
        }
        return found;
    }
}
