package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.capwright.check.CheckedGrade;
import org.capwright.check.CheckedMeasure;
import org.capwright.check.CheckedSize;
import org.capwright.check.NestLine;
import org.capwright.exchange.ForeignFile;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.dxf.DxfContent;
import org.capwright.exchange.dxf.DxfDrawing;
import org.capwright.words.Text;

/**
 * Reads sleeves drawn elsewhere as ASCII DXF of release 12 or later: polylines with bulges, lines, arcs, circles, ellipses and splines, in blocks or not, flattened to 0.01 mm. The
 * sizes may be blocks, layers, places on a sheet, or files. The sew line is measured where there is one; a cut line alone is measured as it is, with the allowance, and that is told.
 *
 * <p>A piece may lie at any angle. A half is stood up by its fold. A whole sleeve is stood up square to the line between its underarm points, or by its grain line, if a second sign agrees: the hem,
 * the grain line, a line inside, its own mirror image, or the sheet. Where nothing agrees the piece is refused, as its cap height would be a guess.
 *
 * <p>The apex is the highest point. The underarm points are the first corners of the outline to its left and right; a straight edge down from the apex is a fold, and the piece is
 * unfolded about it. The hem is the lowest stretch between corners that runs across.
 */
public final class OutlineReader {

    /** The most bytes of a file that is read. */
    public static final int MOST_BYTES = 24_000_000;

    /** The most files that are read together. */
    public static final int MOST_FILES = 60;

    private static final int MOST_SIZES = 200;

    /** The names of pieces begin in no more ways than these when sizes without a piece are looked for. */
    private static final int MOST_BEGINNINGS = 20;

    /** A curve that is drawn again by straight steps is shorter by less, mm. */
    private static final double SAME = 0.5;

    private static final Text ONLY_OVERLAYS = Text.of(
            "no outline of any size is a sleeve: there are only overlays, and their top edges, cut for pleats, show"
                    + " neither bicep nor cap; add the sleeve under them, or send a spec table");

    private final ForeignOptions options;
    private final ImportNotes traces;
    private final List<SizedPiece> pieces = new ArrayList<>();
    private final List<String> layers = new ArrayList<>();
    private final List<String> blocks = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();
    private final List<Text> emptyFiles = new ArrayList<>();
    private Optional<String> statedBase = Optional.empty();

    private OutlineReader(ForeignOptions options, ImportNotes traces) {
        this.options = options;
        this.traces = traces;
    }

    /**
     * Reads one drawing, or one per size.
     *
     * @param files one or more, all of one style, together no more than {@link #MOST_BYTES}
     * @param options unit, before what the drawings state; base size
     * @return the sizes with figures and lines, smallest first where their labels are numbers or S, M, L, else in the order of the drawings; and how they were found
     * @throws ForeignInputException if a file is no DXF or broken, too large, states no unit, or holds no sleeve
     */
    public static ForeignGrade read(List<ForeignFile> files, ForeignOptions options) throws ForeignInputException {
        if (files.isEmpty() || files.size() > MOST_FILES) {
            throw new ForeignInputException(
                    "",
                    0,
                    Text.of("between 1 and {most} drawings are read together, not {count}")
                            .with("most", MOST_FILES)
                            .with("count", files.size()));
        }
        long bytes = 0;
        for (ForeignFile file : files) {
            file.atMost(MOST_BYTES);
            file.notOfAnotherFormat();
            bytes += file.bytes().length;
            if (bytes > MOST_BYTES) {
                throw new ForeignInputException(
                        file.name(),
                        0,
                        Text.of("the files together have more than {most} million bytes")
                                .with("most", MOST_BYTES / 1_000_000));
            }
        }
        OutlineReader reader =
                new OutlineReader(options, new ImportNotes(files.get(0).name()));
        for (ForeignFile file : files) {
            reader.read(file);
        }
        return reader.grade(files.get(0).name());
    }

    private void read(ForeignFile file) throws ForeignInputException {
        ImportNotes own = traces.of(file.name());
        DxfDrawing drawing = DxfDrawing.of(file);
        DxfContent expansion = drawing.content(DrawingUnit.of(drawing, options, own));
        for (String type : expansion.leftOut()) {
            own.leftOut(0, ImportNote.FILE, Text.of("entities {type}").with("type", type));
        }
        if (statedBase.isEmpty()) {
            statedBase = expansion.words().stream()
                    .flatMap(word -> SizeScale.namedBase(word.text()).stream())
                    .findFirst();
        }
        // Layer 0 is there in every drawing.
        drawing.layers().stream().filter(layer -> !layer.equals("0")).forEach(layers::add);
        blocks.addAll(drawing.blockNames());
        expansion.words().forEach(word -> SizeScale.named(word.text()).ifPresent(texts::add));
        List<SizedPiece> found = Pieces.of(file.name(), expansion, own);
        if (found.isEmpty()) {
            emptyFiles.add(own.list().stream()
                    .filter(note -> note.kind() == ImportNote.Kind.NOT_READ
                            && note.file().equals(file.name()))
                    .map(note -> Text.of("the drawing holds no closed outline of the size of a piece: {reason}")
                            .with("reason", note.words()))
                    .findFirst()
                    .orElse(Text.of("the drawing holds no closed outline of the size of a piece")));
            own.notRead(0, Pieces.ofFileName(file.name()), emptyFiles.get(emptyFiles.size() - 1));
            texts.add(Pieces.ofFileName(file.name()));
        }
        pieces.addAll(found);
    }

    private ForeignGrade grade(String file) throws ForeignInputException {
        if (pieces.isEmpty()) {
            throw new ForeignInputException(file, 0, emptyFiles.get(0));
        }
        passOverNotches();
        Map<String, List<SizedPiece>> bySize = new LinkedHashMap<>();
        for (SizedPiece piece : pieces) {
            if (piece.label().isPresent()) {
                String label = piece.label().get();
                if (label.length() > 40) {
                    throw new ForeignInputException(
                            piece.file(),
                            piece.outline().line(),
                            Text.of("a size whose name has more than 40 characters"));
                }
                bySize.computeIfAbsent(label, l -> new ArrayList<>()).add(piece);
            } else {
                ImportNotes own = traces.of(piece.file());
                Text words = Text.of("an outline that no size can be found for");
                if (piece.name() == PieceName.OTHER) {
                    own.leftOut(piece.outline().line(), ImportNote.FILE, words);
                } else {
                    own.notRead(piece.outline().line(), ImportNote.FILE, words);
                }
            }
        }
        boolean named = pieces.stream().anyMatch(piece -> piece.name() == PieceName.SLEEVE);
        PieceName wanted = named ? PieceName.SLEEVE : PieceName.UNKNOWN;
        Set<String> unnamed = bySize.entrySet().stream()
                .filter(entry -> entry.getValue().stream()
                        .noneMatch(piece -> piece.name() == wanted || piece.name() == PieceName.OVERLAY))
                .filter(entry -> entry.getValue().stream().anyMatch(piece -> piece.name() == PieceName.UNKNOWN))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
        for (SizedPiece piece : pieces) {
            if (piece.name() == PieceName.UNKNOWN
                    && piece.label().filter(unnamed::contains).isPresent()) {
                traces.of(piece.file())
                        .leftOut(
                                piece.outline().line(),
                                piece.label().get(),
                                Text.of("a piece without a name, beside pieces that are named as sleeves"));
            }
        }
        bySize.values()
                .removeIf(ofSize -> ofSize.stream()
                        .noneMatch(piece -> piece.name() == wanted || piece.name() == PieceName.OVERLAY));
        if (bySize.isEmpty() || bySize.size() > MOST_SIZES) {
            throw new ForeignInputException(
                    file,
                    0,
                    Text.of("between 1 and {most} sizes with a sleeve or an overlay are read, not {count}")
                            .with("most", MOST_SIZES)
                            .with("count", bySize.size()));
        }
        lost(bySize.keySet(), unnamed).forEach(label -> bySize.put(label, List.of()));
        List<CheckedSize> sizes = new ArrayList<>();
        List<String> labels = List.copyOf(bySize.keySet());
        List<Text> reasons = new ArrayList<>();
        int line = 0;
        for (int at : SizeScale.order(labels)) {
            String label = labels.get(at);
            List<SizedPiece> ofSize = bySize.getOrDefault(label, List.of());
            sizes.add(size(label, ofSize, wanted, reasons));
            line = line == 0 && !ofSize.isEmpty() ? ofSize.get(0).outline().line() : line;
        }
        if (sizes.stream().allMatch(size -> size.values().isEmpty())) {
            boolean overlays = pieces.stream().noneMatch(piece -> piece.name() == wanted);
            throw new ForeignInputException(
                    file,
                    line,
                    overlays
                            ? ONLY_OVERLAYS
                            : reasons.isEmpty()
                                    ? Text.of("no outline of any size is a sleeve")
                                    : Text.of("no outline of any size is a sleeve: {reason}")
                                            .with("reason", reasons.get(0)));
        }
        int base = BaseSize.of(file, sizes.stream().map(CheckedSize::label).toList(), options, statedBase, traces);
        return new ForeignGrade(new CheckedGrade(sizes, base, Optional.empty()), traces.list());
    }

    /** Notches are cut in most sizes; what only one size has is a point that was moved. */
    private void passOverNotches() {
        for (PieceName name : PieceName.values()) {
            List<SizedPiece> named =
                    pieces.stream().filter(piece -> piece.name() == name).toList();
            long notched = named.stream()
                    .filter(piece -> piece.withoutNotches().outline().points().size()
                            < piece.outline().points().size())
                    .count();
            if (2 * notched > named.size()) {
                pieces.replaceAll(piece -> piece.name() == name ? piece.withoutNotches() : piece);
            }
        }
    }

    /** Sizes that are named in the drawings and have no piece there. */
    private List<String> lost(Set<String> read, Set<String> unnamed) {
        if (pieces.stream().anyMatch(piece -> piece.how().contains(Pieces.NUMBERED))) {
            // Numbers of our own are no sizes that a name could stand beside.
            if (texts.size() > 1) {
                traces.notRead(
                        0,
                        ImportNote.FILE,
                        Text.of("texts name the sizes {sizes}, but do not show which outline is which; the sizes are"
                                        + " numbered by area")
                                .with("sizes", ForeignInputException.shown(String.join(", ", texts))));
            }
            return List.of();
        }
        List<String> names = new ArrayList<>(texts);
        named(layers, Outline::layer, names);
        named(blocks, outline -> outline.instance().block(), names);
        // Where one piece alone bears the name of a sleeve, nothing tells sizes from other pieces.
        List<String> lost = read.size() == 1 ? List.copyOf(unnamed) : LostSizes.among(unnamed, names, read);
        for (String label : lost) {
            traces.notRead(
                    0,
                    label,
                    Text.of(
                                    unnamed.contains(label)
                                            ? "the drawing names size {size}, but not its piece as those of the other"
                                                    + " sizes"
                                            : "the drawing names size {size}, but shows no piece of it")
                            .with("size", label));
        }
        return lost;
    }

    /** What stands in names where the names of pieces that were read have their size: at the end, after the same beginning. */
    private void named(List<String> declared, Function<Outline, String> name, List<String> names) {
        pieces.stream()
                .flatMap(piece -> piece
                        .label()
                        .filter(name.apply(piece.outline())::endsWith)
                        .map(label -> name.apply(piece.outline())
                                .substring(0, name.apply(piece.outline()).length() - label.length()))
                        .stream())
                .distinct()
                .limit(MOST_BEGINNINGS)
                .forEach(beginning -> declared.stream()
                        .filter(other -> other.startsWith(beginning))
                        .forEach(other -> names.add(other.substring(beginning.length()))));
    }

    private record Found(SizedPiece piece, SleeveShape shape) {}

    private CheckedSize size(String label, List<SizedPiece> candidates, PieceName wanted, List<Text> reasons) {
        Map<CheckedMeasure, Double> values = new EnumMap<>(CheckedMeasure.class);
        List<NestLine> lines = new ArrayList<>();
        Optional<Found> sleeve = longest(label, candidates, wanted, reasons);
        Optional<Found> overlay = longest(label, candidates, PieceName.OVERLAY, reasons);
        sleeve.ifPresent(found -> {
            List<Text> how = new ArrayList<>(found.piece.how());
            how.add(found.shape.how());
            values.putAll(SleeveFigures.sleeve(found.shape, found.piece.marks(), how));
            lines.add(new NestLine(NestLine.Kind.CAP_LINE, found.shape.cap()));
            tell(label, found.piece, how);
        });
        overlay.ifPresent(found -> {
            List<Text> how = new ArrayList<>(found.piece.how());
            how.add(found.shape.how());
            values.putAll(SleeveFigures.overlay(found.shape, how));
            lines.addAll(SleeveFigures.overlayLines(found.shape));
            sleeve.flatMap(s -> SleeveFigures.rise(found.shape, s.shape))
                    .ifPresent(rise -> values.put(CheckedMeasure.RISE, rise));
            tell(label, found.piece, how);
        });
        return new CheckedSize(label, values).withLines(lines);
    }

    private void tell(String label, SizedPiece piece, List<Text> how) {
        boolean assumed = piece.outline().role() != LineRole.SEW || piece.name() == PieceName.UNKNOWN;
        ImportNotes own = traces.of(piece.file());
        Text words = Text.joined(how, "; ");
        if (assumed) {
            own.assumed(piece.outline().line(), label, words);
        } else {
            own.found(piece.outline().line(), label, words);
        }
    }

    /** The longest of the pieces of a name that have the shape of a sleeve. What is not read of a size that has such pieces is not judged. */
    private Optional<Found> longest(String label, List<SizedPiece> candidates, PieceName wanted, List<Text> reasons) {
        List<Found> found = new ArrayList<>();
        List<Text> refused = new ArrayList<>();
        Optional<SizedPiece> first = Optional.empty();
        for (SizedPiece piece : candidates) {
            if (piece.name() != wanted) {
                continue;
            }
            first = first.or(() -> Optional.of(piece));
            try {
                found.add(new Found(
                        piece, wanted == PieceName.OVERLAY ? SleeveFinder.overlay(piece) : SleeveFinder.sleeve(piece)));
            } catch (SleeveShape.NoSleeve e) {
                reasons.add(e.reason());
                refused.add(e.reason());
                traces.of(piece.file())
                        .leftOut(
                                piece.outline().line(),
                                label,
                                Text.of("an outline that is no sleeve: {reason}")
                                        .with("reason", e.reason()));
            }
        }
        if (found.isEmpty() && first.isPresent()) {
            traces.of(first.get().file())
                    .notRead(
                            first.get().outline().line(),
                            label,
                            Text.of(
                                            wanted == PieceName.OVERLAY
                                                    ? "the overlay of size {size}: {reason}"
                                                    : "the sleeve of size {size}: {reason}")
                                    .with("size", label)
                                    .with("reason", refused.get(0)));
        }
        found.sort(java.util.Comparator.comparingDouble((Found f) -> -depth(f.shape)));
        for (Found other : found.subList(Math.min(1, found.size()), found.size())) {
            ImportNotes own = traces.of(other.piece.file());
            int line = other.piece.outline().line();
            if (isSame(other.shape, found.get(0).shape)) {
                own.leftOut(line, label, Text.of("the same sleeve, drawn again"));
            } else {
                own.notRead(
                        line,
                        label,
                        Text.of("another sleeve of size {size}; the longest is taken")
                                .with("size", label));
            }
        }
        return found.isEmpty() ? Optional.empty() : Optional.of(found.get(0));
    }

    /** Whether two outlines are one sleeve, drawn twice or for both arms. */
    private static boolean isSame(SleeveShape one, SleeveShape other) {
        List<Double> figures = figures(one);
        List<Double> others = figures(other);
        return IntStream.range(0, figures.size()).allMatch(i -> Math.abs(figures.get(i) - others.get(i)) < SAME);
    }

    private static List<Double> figures(SleeveShape shape) {
        double front = shape.frontCapLine();
        double back = shape.backCapLine();
        return List.of(
                shape.bicep(),
                shape.capHeight(),
                depth(shape),
                Math.min(front, back),
                Math.max(front, back),
                shape.hem().map(SleeveShape::length).orElse(0.0));
    }

    private static double depth(SleeveShape shape) {
        double lowest = 0;
        for (var point : shape.lower()) {
            lowest = Math.min(lowest, point.y());
        }
        return shape.capHeight() - lowest;
    }
}
