package org.capwright.exchange.dxf;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.grade.GradedSize;
import org.capwright.pattern.PatternSet;
import org.capwright.pattern.Piece;

/**
 * The base size of every piece and the rules that give the other sizes, for rooms that grade by points. Every line has as many points in every size, at the
 * same fractions of the arc length between corners; applied to the base size, the rules give each size's cut line, net line, notches and marks back within 0.01 mm. An edge that some size has not, as a side that
 * grows from nothing, has its two points there at one place, 0.004 mm apart. Notches and marks that not every size has are left out, and the drawing says so. Drawing and rule table go together. Guaranteed to be immutable.
 */
public final class PointGrading {

    private static final String NAME = "GRADE-RULES";

    private final PatternSet set;
    private final List<GradedPiece> pieces;
    private final RuleTable rules;
    private final List<String> left;

    private PointGrading(PatternSet set, List<GradedPiece> pieces, RuleTable rules, List<String> left) {
        this.set = set;
        this.pieces = pieces;
        this.rules = rules;
        this.left = left;
    }

    /**
     * Matches the points of all sizes.
     *
     * @param set the pieces of all sizes
     * @return base size and rules
     */
    public static PointGrading of(PatternSet set) {
        int base = set.run().base();
        RuleBook book = new RuleBook(base);
        List<GradedPiece> pieces = new ArrayList<>();
        List<String> left = new ArrayList<>();
        for (int kind = 0; kind < set.sizes().get(base).size(); kind++) {
            SharedParts shared = SharedParts.of(SharedEdges.of(set.acrossSizes(kind)), base);
            List<Piece> sizes = shared.pieces();
            shared.left().forEach(part -> left.add(sizes.get(base).kind().id() + ": " + part));
            pieces.add(PieceGrading.of(sizes, base, book));
        }
        List<String> labels = set.run().sizes().stream()
                .map(GradedSize::label)
                .map(PointGrading::word)
                .toList();
        return new PointGrading(
                set,
                List.copyOf(pieces),
                new RuleTable(NAME, labels, labels.get(base), book.rules()),
                List.copyOf(left));
    }

    /**
     * The drawing of the base size: one block per piece, with {@code # n} at every grade point.
     *
     * @return a whole DXF file
     */
    public byte[] drawing() {
        return GradedDrawing.of(set, pieces, rules, left, Optional.empty());
    }

    /**
     * The drawing of the base size with its date of creation.
     *
     * @param created written into the file
     * @return a whole DXF file
     */
    public byte[] drawing(LocalDate created) {
        return GradedDrawing.of(set, pieces, rules, left, Optional.of(created));
    }

    /**
     * The rules.
     *
     * @return the rule table
     */
    public RuleTable rules() {
        return rules;
    }

    /** A size list is read by its white space. */
    static String word(String label) {
        return label.strip().replaceAll("\\s+", "_");
    }
}
