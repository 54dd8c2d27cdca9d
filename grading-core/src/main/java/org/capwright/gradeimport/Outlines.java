package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.exchange.dxf.Insertion;
import org.capwright.geometry.Point;

/** Finds the closed lines of a drawing. */
final class Outlines {

    static final int MOST = 3000;

    private static final int MOST_FOLDS = 300;

    /** Smaller closed lines are marks, square mm. */
    private static final double LEAST_AREA = 800;

    private record Place(Insertion instance, String layer) {}

    private Outlines() {}

    static List<Outline> of(List<DrawnLine> lines, ImportNotes traces) throws ForeignInputException {
        List<Outline> found = new ArrayList<>();
        Map<Place, List<DrawnLine>> open = new LinkedHashMap<>();
        for (DrawnLine line : lines) {
            boolean meets = line.points().size() > 3 && line.start().distanceTo(line.end()) <= Chaining.MEET;
            if (line.closed() && line.points().size() > 2 || meets) {
                add(traces.file(), found, Outline.of(line.layer(), line.instance(), line.line(), line.points()));
            } else {
                open.computeIfAbsent(new Place(line.instance(), line.layer()), p -> new ArrayList<>())
                        .add(line);
            }
        }
        List<DrawnLine> folds = lines.stream()
                .filter(line -> LineRole.of(line.layer()) == LineRole.FOLD)
                .limit(MOST_FOLDS)
                .toList();
        for (Map.Entry<Place, List<DrawnLine>> entry : open.entrySet()) {
            chain(entry.getKey(), entry.getValue(), folds, found, traces);
        }
        return found;
    }

    private static void chain(
            Place place, List<DrawnLine> open, List<DrawnLine> folds, List<Outline> found, ImportNotes traces)
            throws ForeignInputException {
        Chaining chaining = Chaining.of(open);
        for (Chaining.Closed closed : chaining.closed()) {
            Outline outline = Outline.of(place.layer, place.instance, closed.line(), closed.points());
            if (closed.gap() > Chaining.MEET && outline.area() >= LEAST_AREA) {
                traces.assumed(
                        closed.line(),
                        ImportNote.FILE,
                        "an outline whose ends do not quite meet, on layer " + ForeignInputException.shown(place.layer)
                                + ", is taken as closed");
            }
            add(traces.file(), found, outline);
        }
        LineRole role = LineRole.of(place.layer);
        for (Chaining.Open chain : chaining.open()) {
            boolean canBe = role == LineRole.SEW || role == LineRole.CUT || role == LineRole.UNKNOWN;
            if (canBe && chain.points().size() > 3) {
                byFold(place, chain, folds, found, traces);
            }
        }
    }

    /** An open chain whose two ends lie on the ends of a fold line is closed by the fold. */
    private static void byFold(
            Place place, Chaining.Open chain, List<DrawnLine> folds, List<Outline> found, ImportNotes traces)
            throws ForeignInputException {
        Point start = chain.points().get(0);
        Point end = chain.points().get(chain.points().size() - 1);
        Outline outline = Outline.of(place.layer, place.instance, chain.line(), chain.points());
        if (outline.area() < LEAST_AREA) {
            return;
        }
        for (DrawnLine line : folds) {
            if (start.distanceTo(line.start(), line.end()) <= Chaining.GAP
                    && end.distanceTo(line.start(), line.end()) <= Chaining.GAP) {
                traces.found(
                        chain.line(),
                        ImportNote.FILE,
                        "an open outline on layer " + ForeignInputException.shown(place.layer)
                                + " is closed by the fold line");
                add(traces.file(), found, outline);
                return;
            }
        }
        if (outline.area() >= 10 * LEAST_AREA) {
            traces.leftOut(
                    chain.line(),
                    ImportNote.FILE,
                    "a line on layer " + ForeignInputException.shown(place.layer)
                            + " looks like an outline but is not closed");
        }
    }

    private static void add(String file, List<Outline> found, Outline outline) throws ForeignInputException {
        if (outline.area() < LEAST_AREA || !Double.isFinite(outline.area())) {
            return;
        }
        if (found.size() == MOST) {
            throw new ForeignInputException(file, outline.line(), "more than " + MOST + " outlines are not read");
        }
        found.add(outline);
    }
}
