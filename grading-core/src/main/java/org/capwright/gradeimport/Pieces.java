package org.capwright.gradeimport;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.capwright.exchange.ForeignInputException;
import org.capwright.exchange.dxf.DrawnLine;
import org.capwright.exchange.dxf.DrawnText;
import org.capwright.exchange.dxf.DxfContent;
import org.capwright.exchange.dxf.Insertion;
import org.capwright.geometry.Box;
import org.capwright.words.Text;

/** Sorts the outlines of one drawing by piece and size: by blocks, by layers, by the texts in and beside them. */
final class Pieces {

    /** How a size is told that nothing names. */
    static final Text NUMBERED = Text.of("sizes numbered by area, as nothing in the drawing names them");

    private static final Text BY_TEXT_OR_LAYER = Text.of("size by the text or the name of the layer");

    private static final Pattern KEYED = Pattern.compile("[\\p{Lu} ]{3,30}:.*");
    private static final Pattern NAMING = Pattern.compile("(?i)(?:piece name|piece|category)\\s*:\\s*(.+)");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,3}");

    /** A straight line shorter than this share of a piece shows no direction: a tick, or a chord of a curve. */
    private static final double SHORTEST_MARK = 0.03;

    /** Turn points, curve points, notches, grade reference, fold and grain of ASTM D6673. */
    private static final List<String> NEVER_CLOSED = List.of("2", "3", "4", "5", "6", "7");

    /** Outlines of a piece in another size have this share of its area or more. */
    private static final double ALIKE = 0.4;

    private final String file;
    private final DxfContent drawing;
    private final Map<Integer, List<DrawnText>> wordsOf = new HashMap<>();
    private final List<SizedPiece> pieces = new ArrayList<>();
    /** Sizes in texts that name a piece as well. */
    private final Map<Outline, String> besideName = new IdentityHashMap<>();

    private boolean numbered;

    private Pieces(String file, DxfContent drawing) {
        this.file = file;
        this.drawing = drawing;
    }

    static List<SizedPiece> of(String file, DxfContent drawing, ImportNotes traces) throws ForeignInputException {
        Pieces pieces = new Pieces(file, drawing);
        pieces.gatherWords();
        Map<Insertion, List<Outline>> byInstance = new LinkedHashMap<>();
        List<Outline> outlines = new ArrayList<>();
        for (Outline outline : Outlines.of(drawing.lines(), traces)) {
            if (Rectangle.is(outline.points())) {
                traces.leftOut(outline.line(), ImportNote.FILE, Text.of("a rectangle, which is no sleeve"));
            } else {
                outlines.add(outline);
            }
        }
        pieces.numbered = isNumbered(outlines);
        for (Outline outline : pieces.lifted(pieces.meant(outlines))) {
            byInstance
                    .computeIfAbsent(outline.instance(), i -> new ArrayList<>())
                    .add(outline);
        }
        byInstance.forEach(pieces::instance);
        pieces.byNames();
        pieces.byFile();
        return pieces.pieces;
    }

    /**
     * Numbers of layers are those of ASTM D6673 where layer 1 has an outline, else they may be sizes; so they may where a layer of points, notches or single lines has an outline as large.
     */
    private static boolean isNumbered(List<Outline> outlines) {
        double cut = largest(outlines, List.of("1"));
        return cut > 0 && largest(outlines, NEVER_CLOSED) < ALIKE * cut;
    }

    private static double largest(List<Outline> outlines, List<String> layers) {
        return outlines.stream()
                .filter(outline -> layers.contains(outline.layer()))
                .mapToDouble(Outline::area)
                .max()
                .orElse(0);
    }

    /** Without closed marks. */
    private List<Outline> meant(List<Outline> outlines) {
        List<Outline> kept = new ArrayList<>();
        for (Outline outline : outlines) {
            LineRole role = numbered ? outline.role() : LineRole.ofUnnumbered(outline.layer());
            if (role == LineRole.SEW || role == LineRole.CUT || role == LineRole.UNKNOWN) {
                kept.add(outline.as(role));
            }
        }
        return kept;
    }

    /** Texts of each insertion, those of insertions within it among them. */
    private void gatherWords() {
        for (DrawnText word : drawing.words()) {
            boolean useful = SizeScale.named(word.text()).isPresent()
                    || SizeScale.isLabel(word.text())
                    || PieceName.of(word.text()) != PieceName.UNKNOWN;
            Insertion instance = word.instance();
            while (useful) {
                wordsOf.computeIfAbsent(instance.number(), n -> new ArrayList<>())
                        .add(word);
                useful = instance.parent() != 0;
                instance = drawing.instances().get(instance.parent());
            }
        }
    }

    /** An insertion that holds no other piece stands for the one piece in it, with its name and its texts. */
    private List<Outline> lifted(List<Outline> outlines) {
        Map<Integer, Set<Integer>> below = new HashMap<>();
        for (Outline outline : outlines) {
            Insertion at = outline.instance();
            while (at.parent() != 0) {
                at = drawing.instances().get(at.parent());
                below.computeIfAbsent(at.number(), n -> new HashSet<>())
                        .add(outline.instance().number());
            }
        }
        List<Outline> lifted = new ArrayList<>(outlines.size());
        for (Outline outline : outlines) {
            Insertion at = outline.instance();
            while (at.parent() != 0
                    && below.getOrDefault(at.parent(), Set.of()).size() == 1
                    && !namesMore(at, drawing.instances().get(at.parent()))) {
                at = drawing.instances().get(at.parent());
            }
            lifted.add(outline.in(at));
        }
        return lifted;
    }

    /** Whether a block names piece and size, and the one round it, a group, names neither by its name or its texts. */
    private boolean namesMore(Insertion inner, Insertion outer) {
        String[] words = inner.block().split("[\\s_.-]+");
        return PieceName.of(inner.block()) != PieceName.UNKNOWN
                && SizeScale.isLabel(words[words.length - 1])
                && PieceName.of(outer.block()) == PieceName.UNKNOWN
                && !SizeScale.isLabel(outer.block())
                && SizeScale.named(outer.block().replace('_', ' ')).isEmpty()
                && only(wordsOf.getOrDefault(outer.number(), List.of()), true).isEmpty();
    }

    private void instance(Insertion instance, List<Outline> outlines) {
        List<DrawnText> words = wordsOf.getOrDefault(instance.number(), List.of());
        List<List<Outline>> clusters = clusters(outlines);
        List<Box> boxes = clusters.stream()
                .map(cluster -> cluster.stream()
                        .map(Outline::box)
                        .reduce(Box::including)
                        .orElseThrow())
                .toList();
        List<List<DrawnText>> near = new ArrayList<>();
        clusters.forEach(cluster -> near.add(new ArrayList<>()));
        for (DrawnText word : words) {
            near.get(nearest(boxes, word)).add(word);
        }
        Optional<String> one = only(words, true);
        for (int i = 0; i < clusters.size(); i++) {
            Box box = boxes.get(i);
            List<Text> how = new ArrayList<>();
            PieceName name = name(instance, clusters.get(i), near.get(i), box, how);
            Map<Optional<String>, List<Outline>> bySize = new LinkedHashMap<>();
            Map<String, String> keys = layerSizes(outlines, words);
            for (Outline outline : clusters.get(i)) {
                Optional<String> size = instance.number() != 0 && one.isPresent()
                        ? one
                        : Optional.ofNullable(keys.get(outline.layer()))
                                .or(() -> one)
                                .or(() -> only(inside(words, box), false));
                bySize.computeIfAbsent(size, s -> new ArrayList<>()).add(outline);
                onlyBesideName(near.get(i)).ifPresent(label -> besideName.put(outline, label));
            }
            bySize.forEach((size, group) -> add(instance, size, name, group, how));
        }
    }

    /** The one size that texts with the name of a sleeve name, if they name one alone. */
    private static Optional<String> onlyBesideName(List<DrawnText> words) {
        Set<String> sizes = new HashSet<>();
        words.forEach(word -> PieceName.sizeBeside(word.text()).ifPresent(sizes::add));
        return sizes.size() == 1 ? sizes.stream().findFirst() : Optional.empty();
    }

    private static List<DrawnText> inside(List<DrawnText> words, Box box) {
        return words.stream().filter(word -> box.distanceTo(word.at()) == 0).toList();
    }

    /** The one size that texts name, if they name one alone. */
    private static Optional<String> only(List<DrawnText> words, boolean named) {
        Set<String> sizes = new HashSet<>();
        words.forEach(word -> SizeScale.named(word.text()).ifPresent(sizes::add));
        if (sizes.isEmpty() && !named) {
            words.stream()
                    .map(word -> word.text().strip())
                    .filter(SizeScale::isLabel)
                    .forEach(sizes::add);
        }
        return sizes.size() == 1 ? sizes.stream().findFirst() : Optional.empty();
    }

    /** Sizes that layers are named by: with the words of a text on the layer where there is one. */
    private Map<String, String> layerSizes(List<Outline> outlines, List<DrawnText> words) {
        Map<String, Set<String>> texts = new HashMap<>();
        for (DrawnText word : words) {
            SizeScale.named(word.text())
                    .ifPresent(size -> texts.computeIfAbsent(LineRole.rest(word.layer()), k -> new HashSet<>())
                            .add(size));
        }
        Map<String, String> rests = rests(outlines);
        boolean several = rests.values().stream().distinct().count() > 1;
        boolean labels =
                rests.values().stream().filter(SizeScale::isLabel).distinct().count() > 1;
        Map<String, String> sizes = new HashMap<>();
        for (Outline outline : outlines) {
            String rest = rests.getOrDefault(outline.layer(), "");
            Set<String> named = texts.getOrDefault(LineRole.rest(outline.layer()), Set.of());
            if (numbered && NUMBER.matcher(outline.layer()).matches()) {
                continue;
            }
            // Layer 0 is there in every drawing; a size only where others are sizes too.
            boolean plain = outline.layer().equals("0");
            if (named.size() == 1) {
                sizes.put(outline.layer(), named.iterator().next());
            } else if (!rest.isEmpty() && (several && !labels || SizeScale.isLabel(rest) && !plain)) {
                sizes.put(outline.layer(), rest);
            }
        }
        return sizes;
    }

    /** What is left of the names of layers without words of roles, and without what they all begin or end with where that leaves sizes. */
    private static Map<String, String> rests(List<Outline> outlines) {
        Map<String, String> rests = new LinkedHashMap<>();
        outlines.forEach(outline -> rests.put(outline.layer(), LineRole.rest(outline.layer())));
        List<String> distinct = rests.values().stream().distinct().toList();
        int before = distinct.size() > 1 ? common(distinct) : 0;
        int after = distinct.size() > 1
                ? common(distinct.stream().map(Pieces::backwards).toList())
                : 0;
        boolean known = distinct.stream().allMatch(SizeScale::isLabel);
        boolean bare = !known
                && before + after > 0
                && distinct.stream().map(rest -> between(rest, before, after)).allMatch(SizeScale::isLabel);
        List<String> labels = known || bare || distinct.size() < 2 ? distinct : labels(distinct);
        boolean sizes = labels.stream().allMatch(SizeScale::isLabel);
        rests.replaceAll((layer, rest) -> SizeScale.named(rest)
                .orElse(bare ? between(rest, before, after) : sizes ? labels.get(distinct.indexOf(rest)) : rest));
        return rests;
    }

    private static String backwards(String name) {
        return new StringBuilder(name).reverse().toString();
    }

    private static String between(String name, int before, int after) {
        return before + after < name.length() ? trimmed(name.substring(before, name.length() - after)) : "";
    }

    private static String trimmed(String name) {
        return name.replaceAll("^[\\s_.-]+|[\\s_-]+$", "");
    }

    /** Whether two boxes share a third of the smaller one. */
    private static boolean overlap(Box a, Box b) {
        return a.meets(b) && a.shared(b).area() >= Math.min(a.area(), b.area()) / 3;
    }

    private static int nearest(List<Box> boxes, DrawnText word) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < boxes.size(); i++) {
            double distance = boxes.get(i).distanceTo(word.at());
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    private static List<List<Outline>> clusters(List<Outline> outlines) {
        List<List<Outline>> clusters = new ArrayList<>();
        List<Box> boxes = new ArrayList<>();
        List<Outline> largest = new ArrayList<>(outlines);
        largest.sort(Comparator.comparingDouble((Outline outline) -> -outline.area()));
        for (Outline outline : largest) {
            int at = -1;
            for (int i = 0; i < clusters.size() && at < 0; i++) {
                at = overlap(boxes.get(i), outline.box()) ? i : -1;
            }
            if (at < 0) {
                clusters.add(new ArrayList<>(List.of(outline)));
                boxes.add(outline.box());
            } else {
                clusters.get(at).add(outline);
            }
        }
        return clusters;
    }

    private PieceName name(Insertion instance, List<Outline> cluster, List<DrawnText> near, Box box, List<Text> how) {
        for (DrawnText word : near) {
            var naming = NAMING.matcher(word.text());
            if (naming.matches() && PieceName.of(naming.group(1)) != PieceName.UNKNOWN) {
                how.add(Text.of("piece by the text \u201c{text}\u201d")
                        .with("text", ForeignInputException.shown(word.text())));
                return PieceName.of(naming.group(1));
            }
        }
        if (PieceName.of(instance.block()) != PieceName.UNKNOWN) {
            how.add(Text.of("piece by the name of its block, {block}")
                    .with("block", ForeignInputException.shown(instance.block())));
            return PieceName.of(instance.block());
        }
        Optional<DrawnText> closest = near.stream()
                .filter(word -> !KEYED.matcher(word.text()).matches() && PieceName.of(word.text()) != PieceName.UNKNOWN)
                .min(Comparator.comparingDouble(word -> box.distanceTo(word.at())));
        if (closest.isPresent()) {
            how.add(Text.of("piece by the text \u201c{text}\u201d near it")
                    .with("text", ForeignInputException.shown(closest.get().text())));
            return PieceName.of(closest.get().text());
        }
        for (Outline outline : cluster) {
            if (PieceName.of(outline.layer()) != PieceName.UNKNOWN) {
                how.add(Text.of("piece by the name of its layer, {layer}")
                        .with("layer", ForeignInputException.shown(outline.layer())));
                return PieceName.of(outline.layer());
            }
        }
        return PieceName.UNKNOWN;
    }

    private void add(Insertion instance, Optional<String> size, PieceName name, List<Outline> group, List<Text> how) {
        LineRole best =
                group.stream().map(Outline::role).min(Comparator.naturalOrder()).orElseThrow();
        List<Outline> lines = group.stream()
                .filter(outline -> outline.role() == best)
                .sorted(Comparator.comparingDouble((Outline outline) -> -outline.area()))
                .toList();
        Outline largest = lines.get(0);
        List<Outline> drawn = lines.stream()
                .filter(outline -> outline.area() > ALIKE * largest.area())
                .toList();
        List<Outline> alike = best == LineRole.SEW ? drawn : SeamAllowance.without(drawn);
        boolean inner = alike.size() < drawn.size();
        boolean nest = size.isEmpty() && alike.size() > 2;
        for (Outline outline : nest || size.isPresent() ? alike : List.of(alike.get(0))) {
            List<Text> told = new ArrayList<>(how);
            told.add(
                    switch (inner ? LineRole.SEW : best) {
                        case SEW ->
                            Text.of("sew line on layer {layer}")
                                    .with("layer", ForeignInputException.shown(outline.layer()));
                        case CUT ->
                            Text.of("cut line on layer {layer}; there is no sew line, so all figures include"
                                            + " the seam allowance")
                                    .with("layer", ForeignInputException.shown(outline.layer()));
                        default ->
                            Text.of("closed line on layer {layer}, taken for the sew line")
                                    .with("layer", ForeignInputException.shown(outline.layer()));
                    });
            if (inner) {
                told.add(Text.of("the line round it at one distance is taken for the cut line"));
            }
            size.ifPresent(s -> told.add(BY_TEXT_OR_LAYER));
            Optional<String> coloured = nest ? byColour(outline, alike) : Optional.empty();
            coloured.ifPresent(s -> told.add(Text.of("size by the text of its colour")));
            pieces.add(new SizedPiece(
                    file, size.or(() -> coloured), name, outline, marks(instance, outline), List.copyOf(told)));
        }
    }

    /** The one size that texts in the colour of an outline name, where all outlines differ in colour. */
    private Optional<String> byColour(Outline outline, List<Outline> alike) {
        long colours = alike.stream().map(Outline::colour).distinct().count();
        return outline.colour() == 0 || colours < alike.size()
                ? Optional.empty()
                : only(
                        drawing.words().stream()
                                .filter(word -> word.colour() == outline.colour())
                                .toList(),
                        false);
    }

    private List<DrawnLine> marks(Insertion instance, Outline outline) {
        String rest = LineRole.rest(outline.layer());
        List<DrawnLine> marks = new ArrayList<>();
        Box box = outline.box();
        double shortest = SHORTEST_MARK * Math.hypot(box.width(), box.height());
        for (DrawnLine line : drawing.lines()) {
            if (isIn(line.instance(), instance)
                    && !line.closed()
                    && line.points().size() == 2
                    && line.start().distanceTo(line.end()) >= shortest
                    && marks.size() < 500
                    && (instance.number() != 0
                            || LineRole.rest(line.layer()).equals(rest)
                            || LineRole.of(line.layer()) == LineRole.GRAIN)
                    && outline.box().distanceTo(line.start()) < 1
                    && outline.box().distanceTo(line.end()) < 1) {
                marks.add(line);
            }
        }
        return marks;
    }

    private boolean isIn(Insertion inner, Insertion outer) {
        Insertion at = inner;
        while (at.number() != outer.number() && at.parent() != 0) {
            at = drawing.instances().get(at.parent());
        }
        return at.number() == outer.number();
    }

    /**
     * Pieces without a size: the end of their blocks' names, beyond what all names have in common. A program that numbers blocks names none; so texts that name piece and size, and the layers of pieces in
     * blocks, go before names that are no plain sizes.
     */
    private void byNames() {
        Map<PieceName, List<Integer>> onSheet = new EnumMap<>(PieceName.class);
        Map<PieceName, List<Integer>> inBlocks = new EnumMap<>(PieceName.class);
        for (int i = 0; i < pieces.size(); i++) {
            SizedPiece piece = pieces.get(i);
            if (piece.label().isEmpty()) {
                (piece.outline().instance().block().isEmpty() ? onSheet : inBlocks)
                        .computeIfAbsent(piece.name(), n -> new ArrayList<>())
                        .add(i);
            }
        }
        onSheet.values().forEach(this::byTexts);
        for (List<Integer> group : inBlocks.values()) {
            List<String> blocks =
                    labels(named(group, outline -> outline.instance().block()));
            if (blocks.stream().allMatch(SizeScale::isPlain) || !byTexts(group) && !byLayers(group)) {
                byBlocks(group, blocks);
            }
        }
    }

    private boolean byTexts(List<Integer> group) {
        return label(group, named(group, outline -> besideName.getOrDefault(outline, "")));
    }

    private boolean byLayers(List<Integer> group) {
        return label(group, labels(named(group, outline -> LineRole.rest(outline.layer()))));
    }

    private List<String> named(List<Integer> group, Function<Outline, String> name) {
        return group.stream().map(i -> name.apply(pieces.get(i).outline())).toList();
    }

    /** Whether labels were given, which they are where they are sizes that differ. */
    private boolean label(List<Integer> group, List<String> labels) {
        boolean told = group.size() > 1
                && labels.stream().allMatch(SizeScale::isLabel)
                && Set.copyOf(labels).size() == group.size();
        for (int k = 0; k < group.size() && told; k++) {
            pieces.set(group.get(k), pieces.get(group.get(k)).labelled(labels.get(k), BY_TEXT_OR_LAYER));
        }
        return told;
    }

    private void byBlocks(List<Integer> group, List<String> labels) {
        for (int k = 0; k < group.size(); k++) {
            SizedPiece piece = pieces.get(group.get(k));
            if (!labels.get(k).isEmpty()) {
                pieces.set(
                        group.get(k),
                        piece.labelled(
                                labels.get(k),
                                Text.of("size by the name of its block, {block}")
                                        .with(
                                                "block",
                                                ForeignInputException.shown(piece.outline()
                                                        .instance()
                                                        .block()))));
            }
        }
    }

    /** What stands in names beyond what they have in common: up to the last break, or up to a size where none parts it from the word before. */
    private static List<String> labels(List<String> names) {
        List<String> labels = beyond(names, common(names));
        if (labels.stream().allMatch(SizeScale::isLabel)) {
            return labels;
        }
        List<String> joined = beyond(names, joined(names));
        return joined.stream().allMatch(SizeScale::isLabel) ? joined : labels;
    }

    private static List<String> beyond(List<String> names, int begin) {
        return names.stream()
                .map(name -> trimmed(name.substring(begin)))
                .map(label -> SizeScale.named(label).orElse(label))
                .toList();
    }

    /** How many letters all names begin with, without those that begin a size such as 36 or XL. */
    private static int joined(List<String> names) {
        String first = names.get(0);
        int end = same(names);
        while (end > 0 && (Character.isDigit(first.charAt(end - 1)) || "Xx".indexOf(first.charAt(end - 1)) >= 0)) {
            end--;
        }
        return end;
    }

    /** How many letters all names begin with, up to the last break; of one name, up to its last break. */
    private static int common(List<String> names) {
        String first = names.get(0);
        int end = same(names);
        while (end > 0
                && Character.isLetterOrDigit(first.charAt(end - 1)) == isInside(first, end)
                && Character.isLetterOrDigit(first.charAt(end - 1))) {
            end--;
        }
        return end;
    }

    private static int same(List<String> names) {
        String first = names.get(0);
        int common = first.length();
        for (String name : names) {
            int same = 0;
            while (same < Math.min(common, name.length())
                    && Character.toUpperCase(name.charAt(same)) == Character.toUpperCase(first.charAt(same))) {
                same++;
            }
            common = same;
        }
        return common;
    }

    private static boolean isInside(String name, int at) {
        return at >= name.length() || Character.isLetterOrDigit(name.charAt(at));
    }

    /** A drawing of one size: by a text anywhere in it, else by the name of the file. Several outlines without any name: by their area. */
    private void byFile() {
        List<Integer> open = new ArrayList<>();
        for (int i = 0; i < pieces.size(); i++) {
            if (pieces.get(i).label().isEmpty()) {
                open.add(i);
            }
        }
        Set<String> stated = new HashSet<>();
        drawing.words().forEach(word -> SizeScale.named(word.text()).ifPresent(stated::add));
        boolean alone = open.size() == pieces.size();
        Map<PieceName, List<Integer>> byName = new HashMap<>();
        open.forEach(i -> byName.computeIfAbsent(pieces.get(i).name(), n -> new ArrayList<>())
                .add(i));
        for (List<Integer> group : byName.values()) {
            if (group.size() == 1 && alone) {
                int i = group.get(0);
                String label = stated.size() == 1 ? stated.iterator().next() : ofFileName(file);
                pieces.set(
                        i,
                        pieces.get(i)
                                .labelled(
                                        label,
                                        Text.of(
                                                stated.size() == 1
                                                        ? "size by the only text that names one"
                                                        : "size by the name of the file")));
            } else if (alone) {
                List<Integer> byArea = new ArrayList<>(group);
                byArea.sort(
                        Comparator.comparingDouble(i -> pieces.get(i).outline().area()));
                for (int k = 0; k < byArea.size(); k++) {
                    pieces.set(byArea.get(k), pieces.get(byArea.get(k)).labelled(Integer.toString(k + 1), NUMBERED));
                }
            }
        }
    }

    static String ofFileName(String file) {
        String name = file.replaceAll("^.*[/\\\\]", "").replaceAll("(?i)\\.dxf$", "");
        String[] parts = name.split("[\\s_-]+");
        String last = parts[parts.length - 1];
        String label = SizeScale.isLabel(last) ? last : name;
        String shown = label.isBlank() ? "1" : label.strip();
        return shown.length() > 40 ? shown.substring(0, 40) : shown;
    }
}
