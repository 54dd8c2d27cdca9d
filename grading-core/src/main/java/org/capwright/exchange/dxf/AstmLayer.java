package org.capwright.exchange.dxf;

import java.util.ArrayList;
import java.util.List;
import org.capwright.pattern.MarkKind;

/** The numbered layers of the conventions of ASTM D6673 that a sleeve needs, from memory. */
enum AstmLayer {
    /** Piece boundary (cut line) and the texts that readers look for. */
    BOUNDARY(1, 7),
    /** Turn points: corners of the boundary. */
    TURN_POINTS(2, 1),
    /** Curve points: the other points of the boundary. */
    CURVE_POINTS(3, 5),
    /** Notches. */
    NOTCHES(4, 6),
    /** Mirror line: the fold. */
    MIRROR(6, 4),
    /** Grain line. */
    GRAIN(7, 3),
    /** Internal lines: drawn, not cut. */
    INTERNAL(8, 2),
    /** Drill holes. */
    DRILL_HOLES(13, 6),
    /** Sew line: the net line. */
    SEW(14, 4),
    /** Annotation. */
    ANNOTATION(15, 3);

    private final String id;
    private final int colour;

    AstmLayer(int number, int colour) {
        this.id = Integer.toString(number);
        this.colour = colour;
    }

    String id() {
        return id;
    }

    static AstmLayer of(MarkKind kind) {
        return switch (kind) {
            case GRAIN -> GRAIN;
            case FOLD_LINE -> MIRROR;
            // A whole piece has a centre line, but a reader must not unfold it there.
            case CENTRE_LINE, BICEP_LINE, ELBOW_LINE, PLEAT_FOLD, PLEAT_PLACEMENT, DART_LEG, HALF -> INTERNAL;
            case DRILL_HOLE -> DRILL_HOLES;
        };
    }

    static List<DxfWriter.Layer> all() {
        List<DxfWriter.Layer> layers = new ArrayList<>();
        for (AstmLayer layer : values()) {
            layers.add(new DxfWriter.Layer(layer.id, layer.colour, DxfWriter.LineType.CONTINUOUS));
        }
        return layers;
    }
}
