package org.capwright.report;

import java.util.ArrayList;
import java.util.List;
import org.capwright.drawing.Stroke;
import org.capwright.geometry.Box;
import org.capwright.geometry.Point;
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
 * @param contours their cut lines in the coordinates of the block, for whoever cuts it into pages
 * @param bounds the box about all of them
 */
record Block(int position, List<Layer> layers, int lead, Contours contours, Box bounds) {

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
                            .map(size -> set.shift(which, size, alignment))
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
        Box bounds = Box.EMPTY;
        for (Layer layer : layers) {
            bounds = bounds.including(Box.of(layer.piece.cutLine()).moved(layer.shift));
        }
        Contours contours =
                new Contours(() -> layers.stream().map(Contours.Contour::of).toList());
        return new Block(position, layers, lead, contours, bounds);
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
