package org.capwright.lay;

import java.util.ArrayList;
import java.util.List;
import org.capwright.measure.SleeveSubject.ClothFigure;
import org.capwright.pattern.Material;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Text;

/**
 * A cloth as it lies on the shop's shelf, and how it is laid for cutting. Guaranteed to be immutable.
 *
 * @param material what is cut from it
 * @param width from selvedge edge to selvedge edge as bought, mm, 100 to 10 000
 * @param laying open, or folded lengthwise
 * @param nap whether all pieces must point the same way
 * @param shrinkageLengthwise share of the length as bought that is lost before cutting, 0 to 0.5
 * @param shrinkageCrosswise share of the width as bought that is lost before cutting, 0 to 0.5
 * @param waste share added to the length for flaws, ends and squaring up, 0 to 1
 * @param selvedge width of each selvedge, which is not cut into, mm, 0 or more
 * @param gap least distance between neighbouring cut lines, mm, 0 to 100
 * @param step the shop sells whole multiples of this length, mm, 1 to 10 000: for example 50, or 114.3 for an eighth of a yard
 */
public record Fabric(
        Material material,
        double width,
        Laying laying,
        Nap nap,
        double shrinkageLengthwise,
        double shrinkageCrosswise,
        double waste,
        double selvedge,
        double gap,
        double step) {

    /** Width of a selvedge that is not cut into, mm. Common practice, no source. */
    public static final double USUAL_SELVEDGE = 10;

    /** Distance between neighbouring cut lines, mm. Common practice, no source. */
    public static final double USUAL_GAP = 5;

    /** The shop sells whole multiples of this length, mm. Common practice, no source. */
    public static final double USUAL_STEP = 50;

    /** The widest cloth that is laid, mm. */
    static final double WIDEST = 10_000;

    /** How the cloth lies on the table. */
    public enum Laying {
        /** In one layer, right side up. */
        OPEN,
        /** Folded in half lengthwise, right sides together: two layers, selvedge on selvedge. */
        FOLDED
    }

    /** Whether the cloth looks different upside down. */
    public enum Nap {
        /** Pile, one-way print or sheen: every piece points the same way along the length. */
        WITH,
        /** The same from both ends: a piece may be turned by half a turn. */
        WITHOUT
    }

    /**
     * Checks the figures.
     *
     * @param material what is cut from it
     * @param width as bought, mm, 100 to 10 000
     * @param laying open or folded
     * @param nap with or without
     * @param shrinkageLengthwise 0 to 0.5
     * @param shrinkageCrosswise 0 to 0.5
     * @param waste 0 to 1
     * @param selvedge mm, 0 or more; at most 0.45 of the width after shrinking
     * @param gap mm, 0 to 100
     * @param step mm, 1 to 10 000
     * @throws InvalidMeasuresException if any is out of its range; all such figures are named
     */
    public Fabric {
        List<Violation> found = new ArrayList<>();
        length(found, ClothFigure.WIDTH, "the width of a cloth is outside what can be laid", width, 100, WIDEST);
        share(found, ClothFigure.SHRINKAGE_LENGTHWISE, shrinkageLengthwise, 0.5);
        share(found, ClothFigure.SHRINKAGE_CROSSWISE, shrinkageCrosswise, 0.5);
        share(found, ClothFigure.WASTE, waste, 1);
        length(found, ClothFigure.GAP, "the gap between pieces is outside what can be laid", gap, 0, 100);
        length(
                found,
                ClothFigure.STEP,
                "the step in which the shop sells is outside what can be laid",
                step,
                1,
                10_000);
        if (found.isEmpty()) {
            length(
                    found,
                    ClothFigure.SELVEDGE,
                    "the selvedges would leave too little of the width",
                    selvedge,
                    0,
                    0.45 * width * (1 - shrinkageCrosswise));
        }
        if (!found.isEmpty()) {
            throw new InvalidMeasuresException(found);
        }
    }

    /**
     * A cloth with usual figures: without nap, shrinkage or waste, {@link #USUAL_SELVEDGE}, {@link #USUAL_GAP} and {@link #USUAL_STEP}.
     *
     * @param material what is cut from it
     * @param width from selvedge edge to selvedge edge, mm
     * @param laying open, or folded lengthwise
     * @return the cloth
     */
    public static Fabric plain(Material material, double width, Laying laying) {
        return new Fabric(material, width, laying, Nap.WITHOUT, 0, 0, 0, USUAL_SELVEDGE, USUAL_GAP, USUAL_STEP);
    }

    /**
     * Main cloth with usual figures, folded lengthwise.
     *
     * @param width from selvedge edge to selvedge edge, mm, 100 to 10 000
     * @return the cloth
     * @throws InvalidMeasuresException if the width is out of its range
     */
    public static Fabric main(double width) {
        return plain(Material.MAIN, width, Laying.FOLDED);
    }

    /**
     * Lining with usual figures, folded lengthwise.
     *
     * @param width from selvedge edge to selvedge edge, mm, 100 to 10 000
     * @return the cloth
     * @throws InvalidMeasuresException if the width is out of its range
     */
    public static Fabric lining(double width) {
        return plain(Material.LINING, width, Laying.FOLDED);
    }

    /**
     * Interfacing with usual figures, folded lengthwise.
     *
     * @param width from selvedge edge to selvedge edge, mm, 100 to 10 000
     * @return the cloth
     * @throws InvalidMeasuresException if the width is out of its range
     */
    public static Fabric interfacing(double width) {
        return plain(Material.INTERFACING, width, Laying.FOLDED);
    }

    /**
     * The same cloth in one layer, right side up.
     *
     * @return the cloth
     */
    public Fabric open() {
        return new Fabric(
                material, width, Laying.OPEN, nap, shrinkageLengthwise, shrinkageCrosswise, waste, selvedge, gap, step);
    }

    /**
     * The same cloth, losing some of its size before it is cut.
     *
     * @param lengthwise share of the length as bought, 0 to 0.5
     * @param crosswise share of the width as bought, 0 to 0.5
     * @return the cloth
     * @throws InvalidMeasuresException if a share is out of its range
     */
    public Fabric withShrinkage(double lengthwise, double crosswise) {
        return new Fabric(material, width, laying, nap, lengthwise, crosswise, waste, selvedge, gap, step);
    }

    /**
     * The same cloth with some length added for flaws, ends and squaring up.
     *
     * @param share of the length, 0 to 1
     * @return the cloth
     * @throws InvalidMeasuresException if the share is out of its range
     */
    public Fabric withWaste(double share) {
        return new Fabric(
                material, width, laying, nap, shrinkageLengthwise, shrinkageCrosswise, share, selvedge, gap, step);
    }

    /**
     * The same cloth with other selvedges.
     *
     * @param each width of one, which is not cut into, mm, 0 or more; at most 0.45 of the width after shrinking
     * @return the cloth
     * @throws InvalidMeasuresException if it is out of its range
     */
    public Fabric withSelvedge(double each) {
        return new Fabric(
                material, width, laying, nap, shrinkageLengthwise, shrinkageCrosswise, waste, each, gap, step);
    }

    /**
     * The same cloth, its pieces laid closer or wider apart.
     *
     * @param between least distance between neighbouring cut lines, mm, 0 to 100
     * @return the cloth
     * @throws InvalidMeasuresException if it is out of its range
     */
    public Fabric withGap(double between) {
        return new Fabric(
                material, width, laying, nap, shrinkageLengthwise, shrinkageCrosswise, waste, selvedge, between, step);
    }

    /**
     * The same cloth, sold by another length.
     *
     * @param multiple the shop sells whole multiples of this, mm, 1 to 10 000: 114.3 for an eighth of a yard
     * @return the cloth
     * @throws InvalidMeasuresException if it is out of its range
     */
    public Fabric soldBy(double multiple) {
        return new Fabric(
                material, width, laying, nap, shrinkageLengthwise, shrinkageCrosswise, waste, selvedge, gap, multiple);
    }

    /**
     * The same cloth in another width.
     *
     * @param other mm
     * @return the cloth
     */
    public Fabric withWidth(double other) {
        return new Fabric(
                material, other, laying, nap, shrinkageLengthwise, shrinkageCrosswise, waste, selvedge, gap, step);
    }

    /**
     * The same cloth with another nap.
     *
     * @param other with or without
     * @return the cloth
     */
    public Fabric withNap(Nap other) {
        return new Fabric(
                material, width, laying, other, shrinkageLengthwise, shrinkageCrosswise, waste, selvedge, gap, step);
    }

    /**
     * The width that pieces may cover, of one layer, after shrinking, without selvedges. A folded cloth has one selvedge per layer.
     *
     * @return millimetres
     */
    public double usableWidth() {
        double shrunk = width * (1 - shrinkageCrosswise);
        return laying == Laying.FOLDED ? shrunk / 2 - selvedge : shrunk - 2 * selvedge;
    }

    /**
     * What the cloth is, in words.
     *
     * @param unit unit of its width
     * @return for example {@code Main cloth, 140 cm wide, folded lengthwise, without nap}
     */
    public Text words(Unit unit) {
        return Text.of("{cloth}, {width} wide, {laying}, {nap}")
                .with(
                        "cloth",
                        Text.of(
                                switch (material) {
                                    case MAIN -> "Main cloth";
                                    case LINING -> "Lining";
                                    case INTERFACING -> "Interfacing";
                                }))
                .with("width", Text.figures(unit.format(width) + " " + unit.symbol()))
                .with("laying", Text.of(laying == Laying.FOLDED ? "folded lengthwise" : "open, single layer"))
                .with("nap", Text.of(nap == Nap.WITH ? "with nap" : "without nap"));
    }

    /** The width as bought that leaves a given usable width, rounded up to a thousandth of a millimetre so that it surely does. */
    double widthFor(double usable) {
        double shrunk = laying == Laying.FOLDED ? 2 * (usable + selvedge) : usable + 2 * selvedge;
        return Math.ceil(shrunk / (1 - shrinkageCrosswise) * 1000 - 1e-6) / 1000;
    }

    private static void length(
            List<Violation> found, Subject subject, String words, double value, double least, double greatest) {
        if (!(value >= least && value <= greatest)) {
            found.add(Violation.lengthOutside(subject, words, value, least, greatest));
        }
    }

    private static void share(List<Violation> found, Subject subject, double value, double greatest) {
        if (!(value >= 0 && value <= greatest)) {
            found.add(Violation.outside(
                    subject, "a share of the cloth must lie in its range", Quantity.RATIO, value, 0, greatest));
        }
    }
}
