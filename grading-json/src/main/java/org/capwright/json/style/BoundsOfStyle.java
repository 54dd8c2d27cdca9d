package org.capwright.json.style;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.capwright.GradeRules;
import org.capwright.Pieces;
import org.capwright.StructuredSleeve;
import org.capwright.draft.CapEase;
import org.capwright.draft.CapFit;
import org.capwright.grade.Sizes;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.problem.RequestPlaces;
import org.capwright.measure.Dimension;
import org.capwright.measure.SleeveSubject;
import org.capwright.measure.SleeveSubject.Option;
import org.capwright.quantity.InvalidMeasuresException;
import org.capwright.quantity.Quantity;
import org.capwright.quantity.Violation;
import org.capwright.report.Paper;
import org.capwright.words.Text;
import tools.jackson.core.JsonPointer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.DoubleNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;

/**
 * The range that a field takes at all holds for every style, and most of it does not work in the style that is asked for. Where nothing else is wrong with a request than values outside of their ranges, the engine says what would work
 * in this style, and on what width its pieces can be drawn.
 */
final class BoundsOfStyle {

    /** How far into its range a value is set, from the end that is nearer to what was given. */
    private static final double[] SHARES = {0, 0.004, 0.008, 0.016, 0.03, 0.06, 0.12, 0.25, 0.5, 1};

    private static final Text REASON = Text.of("out of range");

    private BoundsOfStyle() {}

    /** The same refusal with bounds that work in the style, where it can be read with the values further in. */
    static RefusedRequestException instead(RefusedRequestException refused, JsonNode tree) {
        for (double share : SHARES) {
            JsonNode mended = tree.deepCopy();
            for (FieldViolation violation : refused.violations()) {
                Optional<JsonNode> inside = inside(violation, share);
                if (inside.isEmpty() || !set(mended, violation.field(), inside.get())) {
                    return refused;
                }
            }
            try {
                return inStyle(refused.violations(), SizeRunReader.once(mended));
            } catch (RefusedRequestException e) {
                // Another field may leave less than the whole range: further in it may be read.
            }
        }
        return refused;
    }

    private static RefusedRequestException inStyle(List<FieldViolation> refused, SizeRunRequest nearest) {
        RequestPlaces places = RequestPlaces.of(nearest.style());
        List<Violation> outside = new ArrayList<>();
        List<Violation> widths = new ArrayList<>();
        List<FieldViolation> others = new ArrayList<>();
        for (FieldViolation violation : refused) {
            Optional<SleeveSubject> subject = places.subject(violation.field());
            Optional<Violation> width = subject.flatMap(known -> width(violation, known, nearest));
            if (width.isPresent()) {
                widths.add(width.get());
            } else {
                subject.filter(BoundsOfStyle::isTried)
                        .ifPresentOrElse(
                                known -> outside.add(violation(violation, known, nearest)),
                                () -> others.add(violation));
            }
        }
        List<Violation> working = outside.isEmpty()
                ? List.of()
                : StructuredSleeve.of(nearest.title(), nearest.style(), nearest.dimensions())
                        .working(
                                outside,
                                GradeRules.of(nearest.rules()),
                                new Sizes(nearest.sizes(), nearest.base()),
                                nearest.options());
        if (outside.isEmpty() ? widths.isEmpty() : working.stream().noneMatch(BoundsOfStyle::isBounded)) {
            return new RefusedRequestException(refused);
        }
        FoundViolations found = new FoundViolations(nearest.unit());
        found.addAll(working, places);
        found.addAll(widths, places);
        others.forEach(found::add);
        return new RefusedRequestException(found.list());
    }

    /** What is wrong with a width of paper or of the plotter, which the pieces of this run say; empty where they cannot be drafted, or what is refused is no such width. */
    private static Optional<Violation> width(FieldViolation found, SleeveSubject subject, SizeRunRequest run) {
        if (subject != Option.PAPER_WIDTH && subject != Option.PLOTTER_WIDTH) {
            return Optional.empty();
        }
        double width = run.unit().toMillimetres(number(found.value()));
        try {
            Pieces pieces = run.pieces(run.graded());
            if (subject == Option.PLOTTER_WIDTH) {
                pieces.onPlotter(width);
            } else {
                pieces.onPaper(
                                run.paper() instanceof Paper.Projection projection
                                        ? new Paper.Projection(width, projection.ground())
                                        : new Paper.Roll(width))
                        .pages();
            }
            return Optional.empty();
        } catch (InvalidMeasuresException e) {
            return e.violations().stream()
                    .filter(violation -> violation.subject() == subject)
                    .findFirst();
        }
    }

    /** What drafts and pieces follow from; nothing that is only drawn on or bought. */
    private static boolean isTried(SleeveSubject subject) {
        return !(subject instanceof Option option)
                || switch (option) {
                    case CAP_EASE,
                            FRONT_CAP_EASE,
                            BACK_CAP_EASE,
                            JOIN,
                            FULLNESS,
                            PLEAT_COUNT,
                            FLAT_ZONE_FRONT,
                            FLAT_ZONE_BACK,
                            SEAM_ALLOWANCE,
                            TURN_OF_CLOTH,
                            INTERFACING_OVERLAP -> true;
                    default -> false;
                };
    }

    private static boolean isBounded(Violation violation) {
        return violation.least().isPresent() || violation.greatest().isPresent();
    }

    private static Violation violation(FieldViolation found, SleeveSubject subject, SizeRunRequest run) {
        OptionalDouble share = share(found);
        if (share.isPresent()) {
            double armhole = armhole(subject, run);
            return new Violation(
                    subject,
                    Optional.empty(),
                    REASON,
                    Quantity.LENGTH,
                    OptionalDouble.of(armhole * share.getAsDouble()),
                    OptionalDouble.of(armhole * CapEase.LEAST_SHARE),
                    OptionalDouble.of(armhole * CapEase.GREATEST_SHARE),
                    found.value().map(String::valueOf));
        }
        Quantity quantity = found.unit().isPresent()
                ? Quantity.LENGTH
                : subject == Option.PLEAT_COUNT ? Quantity.COUNT : Quantity.RATIO;
        return new Violation(
                subject,
                reason(found),
                quantity,
                inMillimetres(Optional.of(number(found.value())), quantity, run),
                inMillimetres(found.minimum(), quantity, run),
                inMillimetres(found.maximum(), quantity, run));
    }

    /** What is wrong, without the value and its bounds. */
    private static Text reason(FieldViolation found) {
        return found.reason() instanceof Text.Sentence sentence
                ? sentence.parts().getOrDefault("reason", REASON)
                : REASON;
    }

    private static OptionalDouble inMillimetres(Optional<Double> number, Quantity quantity, SizeRunRequest run) {
        return number.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        quantity == Quantity.LENGTH ? run.unit().toMillimetres(number.get()) : number.get());
    }

    private static double number(Optional<Object> value) {
        return ((Number) value.orElseThrow()).doubleValue();
    }

    /** What an ease as a percentage is a share of, mm. */
    private static double armhole(SleeveSubject subject, SizeRunRequest run) {
        double whole = run.dimensions().getOr(Dimension.ARMHOLE, 0);
        if (!(run.style().fit() instanceof CapFit.HalvesFor)) {
            return whole;
        }
        double front = run.dimensions().getOr(Dimension.FRONT_ARMHOLE, whole / 2);
        return subject == Option.BACK_CAP_EASE ? whole - front : front;
    }

    /** A cap ease given as a percentage. */
    private static OptionalDouble share(FieldViolation found) {
        String given = found.value().map(String::valueOf).orElse("").strip();
        if (!found.field().endsWith("/capEase") || !given.matches("[+-]?\\d{1,9}(\\.\\d{1,12})? *%")) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                Double.parseDouble(given.substring(0, given.length() - 1).strip()) / 100);
    }

    /** A value within its range, as a request has it. */
    private static Optional<JsonNode> inside(FieldViolation found, double share) {
        OptionalDouble percentage = share(found);
        if (percentage.isPresent()) {
            boolean low = percentage.getAsDouble() < 0;
            double near = low ? CapEase.LEAST_SHARE : CapEase.GREATEST_SHARE;
            double far = low ? CapEase.GREATEST_SHARE : CapEase.LEAST_SHARE;
            return Optional.of(StringNode.valueOf(Math.round(100 * (near + (far - near) * share)) + "%"));
        }
        if (found.minimum().isEmpty() && found.maximum().isEmpty()
                || found.value().filter(Number.class::isInstance).isEmpty()) {
            return Optional.empty();
        }
        double least = found.minimum().or(found::maximum).orElseThrow();
        double greatest = found.maximum().or(found::minimum).orElseThrow();
        boolean low = number(found.value()) < least;
        double near = low ? least : greatest;
        return Optional.of(DoubleNode.valueOf(near + ((low ? greatest : least) - near) * share));
    }

    /** Puts one value in place of another; false where there is none. */
    private static boolean set(JsonNode tree, String field, JsonNode value) {
        JsonPointer at = JsonPointer.compile(field);
        JsonNode parent = tree.at(at.head());
        JsonPointer last = at.last();
        if (!tree.at(at).isValueNode()) {
            return false;
        }
        if (parent instanceof ObjectNode object) {
            object.set(last.getMatchingProperty(), value);
            return true;
        }
        if (parent instanceof ArrayNode list) {
            list.set(last.getMatchingIndex(), value);
            return true;
        }
        return false;
    }
}
