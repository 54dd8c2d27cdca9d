package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
import org.capwright.geometry.Points;
import org.capwright.grade.Alignment;
import org.capwright.pattern.NestHalves;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;
import org.capwright.words.Language;

/**
 * What is placed on the sheet as one: a piece in the sizes chosen, nested over one another.
 *
 * @param position its position among the blocks of the file
 * @param layers the sizes, smallest first
 * @param lead position of the layer that is drawn with all its marks: the base size where it is chosen, else the middle one
 * @param outlines their cut lines in the coordinates of the block, x and y in turn
 * @param bounds the box about all of them
 * @param stretches of each cut line the boxes about sixteen points each: left, bottom, right and top in turn
 */
record Block(
        int position, List<Layer> layers, int lead, List<double[]> outlines, Box bounds, List<double[]> stretches) {

    /** Points of a stretch of a cut line. */
    static final int STRETCH = 16;

    Block(int position, List<Layer> layers, int lead, List<double[]> outlines, Box bounds) {
        this(
                position,
                layers,
                lead,
                outlines,
                bounds,
                outlines.stream().map(Block::boxes).toList());
    }

    private static double[] boxes(double[] outline) {
        double[] boxes = new double[4 * (outline.length / (2 * STRETCH))];
        for (int k = 0; k < boxes.length; k += 4) {
            int first = k / 4 * 2 * STRETCH;
            boxes[k] = outline[first];
            boxes[k + 1] = outline[first + 1];
            boxes[k + 2] = outline[first];
            boxes[k + 3] = outline[first + 1];
            for (int i = first + 2; i < first + 2 * STRETCH; i += 2) {
                boxes[k] = Math.min(boxes[k], outline[i]);
                boxes[k + 1] = Math.min(boxes[k + 1], outline[i + 1]);
                boxes[k + 2] = Math.max(boxes[k + 2], outline[i]);
                boxes[k + 3] = Math.max(boxes[k + 3], outline[i + 1]);
            }
        }
        return boxes;
    }

    /**
     * One size of a block.
     *
     * @param piece the piece
     * @param shift from its own coordinates to those of the block
     * @param stroke how its cut line is drawn
     */
    record Layer(Piece piece, Point shift, Stroke stroke) {}

    static List<Block> of(PatternSet set, List<Integer> sizes, Alignment alignment) {
        int chosenBase = sizes.indexOf(set.run().base());
        int lead = chosenBase >= 0 ? chosenBase : sizes.size() / 2;
        List<Block> blocks = new ArrayList<>();
        int kinds = set.sizes().isEmpty() ? 0 : set.sizes().get(0).size();
        for (int kind = 0; kind < kinds; kind++) {
            int which = kind;
            List<Piece> pieces = new ArrayList<>(
                    sizes.stream().map(size -> set.sizes().get(size).get(which)).toList());
            List<Point> shifts = sizes.size() == 1
                    ? List.of(Point.ORIGIN)
                    : sizes.stream()
                            .map(size -> set.run().shift(size, alignment))
                            .toList();
            pieces.set(0, NestHalves.smallest(pieces, shifts));
            List<Layer> layers = new ArrayList<>(sizes.size());
            for (int i = 0; i < sizes.size(); i++) {
                layers.add(new Layer(pieces.get(i), shifts.get(i), Stroke.ofSize(i, lead)));
            }
            blocks.add(of(kind, List.copyOf(layers), lead));
        }
        return blocks;
    }

    private static Block of(int position, List<Layer> layers, int lead) {
        List<double[]> outlines = new ArrayList<>(layers.size());
        Box bounds = Box.EMPTY;
        for (Layer layer : layers) {
            Points cut = layer.piece.cutLine();
            double[] outline = new double[2 * cut.size()];
            for (int i = 0; i < cut.size(); i++) {
                outline[2 * i] = cut.x(i) + layer.shift.x();
                outline[2 * i + 1] = cut.y(i) + layer.shift.y();
            }
            bounds = bounds.including(Box.of(cut).moved(layer.shift));
            outlines.add(outline);
        }
        return new Block(position, layers, lead, List.copyOf(outlines), bounds);
    }

    Layer leading() {
        return layers.get(lead);
    }

    boolean nested() {
        return layers.size() > 1;
    }

    String words(Language language) {
        return language.say(leading().piece.kind().words());
    }
}
