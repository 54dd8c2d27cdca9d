package org.capwright;

import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.CornerKind;
import org.capwright.pattern.PatternOptions;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;

/** How pieces are finished, in the unit of the style. Immutable: every call returns a new step. Ranges are judged when the pieces are drafted. */
public final class PieceStep {

    private final Unit unit;
    private final PatternOptions options;

    PieceStep(Unit unit, PatternOptions options) {
        this.unit = unit;
        this.options = options;
    }

    private PieceStep with(Allowances allowances) {
        return new PieceStep(
                unit,
                new PatternOptions(allowances, options.corners(), options.turnOfCloth(), options.interfacingOverlap()));
    }

    private PieceStep with(CornerKind corners) {
        return new PieceStep(
                unit,
                new PatternOptions(options.allowances(), corners, options.turnOfCloth(), options.interfacingOverlap()));
    }

    private double length(Subject subject, double value) {
        return new Given(unit, Dimensions.none()).length(subject, value);
    }

    /**
     * The same allowance along every edge.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep seamAllowance(double width) {
        return with(Allowances.all(length(Option.SEAM_ALLOWANCE, width)));
    }

    /**
     * The allowance along the cap of the under-sleeve.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep armholeAllowance(double width) {
        Allowances old = options.allowances();
        return with(new Allowances(
                length(new SleeveSubject.AllowanceOf("armhole"), width),
                old.attachedEdge(),
                old.sideSeam(),
                old.hem()));
    }

    /**
     * The allowance along the top edge of the overlay.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep attachedEdgeAllowance(double width) {
        Allowances old = options.allowances();
        return with(new Allowances(
                old.armhole(),
                length(new SleeveSubject.AllowanceOf("attachedEdge"), width),
                old.sideSeam(),
                old.hem()));
    }

    /**
     * The allowance along side seams.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep sideSeamAllowance(double width) {
        Allowances old = options.allowances();
        return with(new Allowances(
                old.armhole(),
                old.attachedEdge(),
                length(new SleeveSubject.AllowanceOf("sideSeam"), width),
                old.hem()));
    }

    /**
     * The allowance along hems.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep hemAllowance(double width) {
        Allowances old = options.allowances();
        return with(new Allowances(
                old.armhole(),
                old.attachedEdge(),
                old.sideSeam(),
                length(new SleeveSubject.AllowanceOf("hem"), width)));
    }

    /**
     * Cut lines that meet in a point; so it is unless another corner is asked for.
     *
     * @return the next step
     */
    public PieceStep mitredCorners() {
        return with(CornerKind.MITRED);
    }

    /**
     * Corners cut off.
     *
     * @return the next step
     */
    public PieceStep bevelledCorners() {
        return with(CornerKind.BEVELLED);
    }

    /**
     * Corners squared off to one of their edges.
     *
     * @return the next step
     */
    public PieceStep squaredCorners() {
        return with(CornerKind.SQUARED);
    }

    /**
     * How much higher the hem of the lining lies than that of the main cloth.
     *
     * @param height in the unit of the style, 0 to 20 mm
     * @return the next step
     */
    public PieceStep turnOfCloth(double height) {
        return new PieceStep(
                unit,
                new PatternOptions(
                        options.allowances(),
                        options.corners(),
                        length(Option.TURN_OF_CLOTH, height),
                        options.interfacingOverlap()));
    }

    /**
     * How far the interfacing reaches into the allowances; 0 is cut net.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep interfacingOverlap(double width) {
        return new PieceStep(
                unit,
                new PatternOptions(
                        options.allowances(),
                        options.corners(),
                        options.turnOfCloth(),
                        length(Option.INTERFACING_OVERLAP, width)));
    }

    PatternOptions options() {
        return options;
    }
}
