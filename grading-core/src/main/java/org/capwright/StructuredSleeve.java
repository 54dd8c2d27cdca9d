package org.capwright;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.capwright.draft.CapFit;
import org.capwright.draft.ElbowShaping;
import org.capwright.draft.SleeveStyle;
import org.capwright.grade.GradeRule;
import org.capwright.grade.Sizes;
import org.capwright.measure.Dimensions;
import org.capwright.pattern.PatternDrafter;
import org.capwright.pattern.PatternOptions;
import org.capwright.pattern.PatternSet;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Unit;
import org.capwright.quantity.Violation;
import org.capwright.words.Language;

/**
 * A style: a sleeve, and where it has them a pleated overlay and a long under-sleeve, in the base size. Immutable: every call returns a new style.
 *
 * <pre>{@code
 * StructuredSleeve gown = StructuredSleeve.named("Choir gown sleeve", Unit.CENTIMETRE)
 *         .sleeve(sleeve -> sleeve.bicep(36).capHeight(13.5).armhole(45).length(60))
 *         .underSleeve(under -> under.elbow(30).wrist(22));
 * }</pre>
 */
public final class StructuredSleeve {

    private final PatternSet.Title title;
    private final SleeveStyle style;
    private final Dimensions dimensions;

    private StructuredSleeve(PatternSet.Title title, SleeveStyle style, Dimensions dimensions) {
        this.title = title;
        this.style = style;
        this.dimensions = dimensions;
    }

    /**
     * A style without a dimension yet.
     *
     * @param name name of the style; it stands on every file
     * @param unit unit of everything given from here on, and of the figures in files
     * @return the style, revision 1
     */
    public static StructuredSleeve named(String name, Unit unit) {
        return new StructuredSleeve(
                new PatternSet.Title(name, "1", unit),
                new SleeveStyle(new CapFit.Given(), Optional.empty(), Optional.empty()),
                Dimensions.none());
    }

    /**
     * A style that is known already.
     *
     * @param title what stands on every file
     * @param style what is the same in every size
     * @param dimensions dimensions of the base size
     * @return the style
     */
    public static StructuredSleeve of(PatternSet.Title title, SleeveStyle style, Dimensions dimensions) {
        return new StructuredSleeve(title, style, dimensions);
    }

    /**
     * The same style in another revision.
     *
     * @param revision it stands on every file
     * @return the style
     */
    public StructuredSleeve revision(String revision) {
        return new StructuredSleeve(
                new PatternSet.Title(title.style(), revision, title.unit(), title.language()), style, dimensions);
    }

    /**
     * The language of everything that people read: labels, sewing order, spec table, covers and charts. Names of files, codes and columns stay as they are.
     *
     * @param language English unless it is said
     * @return a style
     */
    public StructuredSleeve language(Language language) {
        return new StructuredSleeve(
                new PatternSet.Title(title.style(), title.revision(), title.unit(), language), style, dimensions);
    }

    /**
     * The sleeve down to the bicep line, and the length of the under-sleeve.
     *
     * @param sleeve gives the dimensions
     * @return the style
     * @throws InvalidMeasuresException if bicep, cap height and cap ease contradict each other, or a value is no number
     */
    public StructuredSleeve sleeve(UnaryOperator<SleeveStep> sleeve) {
        SleeveStep step = sleeve.apply(new SleeveStep(given()));
        return new StructuredSleeve(
                title,
                new SleeveStyle(step.fit(), style.overlay(), style.underSleeve()),
                step.given().dimensions());
    }

    /**
     * The overlay.
     *
     * @param overlay gives the dimensions, the hem and the pleats
     * @return the style
     * @throws InvalidMeasuresException if number and depth of the pleats contradict each other, or a value is no number
     */
    public StructuredSleeve overlay(UnaryOperator<OverlayStep> overlay) {
        OverlayStep step = overlay.apply(new OverlayStep(given()));
        return new StructuredSleeve(
                title,
                new SleeveStyle(style.fit(), Optional.of(step.style()), style.underSleeve()),
                step.given().dimensions());
    }

    /**
     * The long under-sleeve, set into the whole armhole.
     *
     * @param underSleeve gives the dimensions and the shaping at the elbow
     * @return the style
     * @throws InvalidMeasuresException if a value is no number
     */
    public StructuredSleeve underSleeve(UnaryOperator<UnderSleeveStep> underSleeve) {
        UnderSleeveStep step = underSleeve.apply(new UnderSleeveStep(given(), ElbowShaping.TAPERED));
        return new StructuredSleeve(
                title,
                new SleeveStyle(style.fit(), style.overlay(), Optional.of(step.style())),
                step.given().dimensions());
    }

    /**
     * What stands on every file.
     *
     * @return name, revision and unit
     */
    public PatternSet.Title title() {
        return title;
    }

    /**
     * What is the same in every size.
     *
     * @return the style
     */
    public SleeveStyle style() {
        return style;
    }

    /**
     * The base size.
     *
     * @return its dimensions, mm
     */
    public Dimensions dimensions() {
        return dimensions;
    }

    private Given given() {
        return new Given(title.unit(), dimensions);
    }

    /**
     * Drafts every size anew: dimensions grow by the rules outward from the base size, and every curve is drawn for its size.
     *
     * @param rules grade increments; each has one for all jumps, or one per jump
     * @param sizes names of the sizes and which is the base size
     * @return the run
     * @throws InvalidMeasuresException if a dimension is missing, has a rule and no value, or a size cannot be drafted; with everything found wrong and the ranges that
     *     work
     */
    public SizeRun grade(GradeRules rules, Sizes sizes) {
        return grade(rules, sizes, PatternOptions.usual());
    }

    /**
     * Drafts every size anew, for pieces that are known already: the bounds that a refusal names have been tried for them too.
     *
     * @param rules grade increments; each has one for all jumps, or one per jump
     * @param sizes names of the sizes and which is the base size
     * @param options of the pieces that will be drafted
     * @return the run
     * @throws InvalidMeasuresException as for {@link #grade(GradeRules, Sizes)}, and if an option is out of its range
     */
    public SizeRun grade(GradeRules rules, Sizes sizes, PatternOptions options) {
        List<GradeRule> ruled = rules.over(sizes);
        try {
            PatternDrafter.check(options);
            return new SizeRun(
                    title,
                    dimensions,
                    org.capwright.grade.SizeRun.grade(style, dimensions, sizes.labels(), sizes.base(), ruled));
        } catch (InvalidMeasuresException e) {
            throw WorkingValues.instead(e, new Attempt(title, style, dimensions, ruled, sizes, options));
        }
    }

    /**
     * What works in place of values that were refused before anything was drafted, because no sleeve has them: tried in every size, with all pieces.
     *
     * @param outside the values, each with both ends of what its subject takes at all; lengths in mm
     * @param rules grade increments
     * @param sizes names of the sizes and which is the base size
     * @param options of the pieces
     * @return the same violations with bounds that work in this style, which has each of the values at the end nearest to it; and what else must change then. Without bounds where none were found
     */
    public List<Violation> working(List<Violation> outside, GradeRules rules, Sizes sizes, PatternOptions options) {
        return WorkingValues.inPlaceOf(
                outside, new Attempt(title, style, dimensions, rules.over(sizes), sizes, options));
    }
}
