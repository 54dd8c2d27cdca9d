package org.capwright;

import java.util.OptionalDouble;
import org.capwright.measure.Dimensions;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.pattern.Allowances;
import org.capwright.pattern.CornerKind;
import org.capwright.pattern.DrillHoles;
import org.capwright.pattern.Finishing;
import org.capwright.pattern.Halves;
import org.capwright.pattern.LayerThickness;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PieceMarking;
import org.capwright.pattern.PleatInterfacing;
import org.capwright.pattern.PleatNotches;
import org.capwright.pattern.Strips;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Subject;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;

/** How pieces are finished, in the unit of the style. Immutable: every call returns a new step. Ranges are judged when the pieces are drafted. */
public final class PieceStep {

    private final Unit unit;
    private final PatternOptions options;

    PieceStep(Unit unit, PatternOptions options) {
        this.unit = unit;
        this.options = options;
    }

    /**
     * Where finishing begins: 10 mm allowance all round, mitred corners, pieces on the fold, snips at the pleats.
     *
     * @param unit the unit of the style, in which the steps take their lengths
     * @return the usual finish
     */
    public static PieceStep usual(Unit unit) {
        return new PieceStep(unit, PatternOptions.usual());
    }

    private PieceStep with(Allowances allowances) {
        return new PieceStep(unit, options.with(allowances));
    }

    private PieceStep with(CornerKind corners) {
        return new PieceStep(unit, options.with(corners));
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
        return new PieceStep(unit, options.withTurnOfCloth(length(Option.TURN_OF_CLOTH, height)));
    }

    /**
     * How far the interfacing reaches into the allowances; 0 is cut net.
     *
     * @param width in the unit of the style, 0 to 100 mm
     * @return the next step
     */
    public PieceStep interfacingOverlap(double width) {
        return new PieceStep(unit, options.withInterfacingOverlap(length(Option.INTERFACING_OVERLAP, width)));
    }

    /**
     * Pieces drawn whole, cut open, also where their halves are the same: for a cutter, which knows no fold.
     *
     * @return the next step
     */
    public PieceStep wholePieces() {
        PieceMarking old = options.marking();
        return new PieceStep(unit, options.with(new PieceMarking(Halves.WHOLE, old.pleatNotches(), old.drillHoles())));
    }

    /**
     * No snips where pleat lines meet the cut edge.
     *
     * @return the next step
     */
    public PieceStep withoutPleatNotches() {
        PieceMarking old = options.marking();
        return new PieceStep(unit, options.with(new PieceMarking(old.halves(), PleatNotches.NONE, old.drillHoles())));
    }

    /**
     * Holes short of the inner ends of pleats and darts.
     *
     * @return the next step
     */
    public PieceStep drillHoles() {
        PieceMarking old = options.marking();
        return new PieceStep(
                unit, options.with(new PieceMarking(old.halves(), old.pleatNotches(), DrillHoles.PLEATS_AND_DARTS)));
    }

    /**
     * The stay of the closed top edge, the stay of the sleeve head and the strip for the armhole as pieces.
     *
     * @return the next step
     */
    public PieceStep strips() {
        Finishing old = options.finishing();
        return new PieceStep(unit, options.with(new Finishing(Strips.AS_PIECES, old.interfacing(), old.thickness())));
    }

    /**
     * Interfacing that is cut away between the folds of pleats.
     *
     * @return the next step
     */
    public PieceStep interfacingCutAwayInPleats() {
        Finishing old = options.finishing();
        return new PieceStep(
                unit, options.with(new Finishing(old.strips(), PleatInterfacing.CUT_AWAY, old.thickness())));
    }

    /**
     * How thick the cloths are, so that the bulk of the pleats is told.
     *
     * @param main thickness of the main cloth, in the unit of the style, above 0 to 20 mm
     * @param lining thickness of the lining
     * @param interfacing thickness of the interfacing
     * @return the next step
     */
    public PieceStep thickness(double main, double lining, double interfacing) {
        Finishing old = options.finishing();
        LayerThickness thickness = new LayerThickness(thick(main), thick(lining), thick(interfacing));
        return new PieceStep(unit, options.with(new Finishing(old.strips(), old.interfacing(), thickness)));
    }

    private OptionalDouble thick(double value) {
        double length = length(Option.THICKNESS, value);
        if (!(length > 0 && length <= LayerThickness.GREATEST)) {
            throw new InvalidMeasuresException(Violation.lengthOutside(
                    Option.THICKNESS, "no cloth is that thick", length, 0.01, LayerThickness.GREATEST));
        }
        return OptionalDouble.of(length);
    }

    /**
     * What was chosen.
     *
     * @return lengths in mm
     */
    public PatternOptions options() {
        return options;
    }
}
