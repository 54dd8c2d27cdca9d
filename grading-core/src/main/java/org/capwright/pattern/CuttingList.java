package org.capwright.pattern;

import java.util.ArrayList;
import java.util.List;
import org.capwright.geometry.Points;

/**
 * What is cut for one pair of sleeves, piece by piece in every size.
 *
 * @param rows one row per size and piece, in the order of the set
 */
public record CuttingList(List<Row> rows) {

    /**
     * One piece of one size.
     *
     * @param size label of the size
     * @param piece which piece
     * @param count how many are cut for a pair of sleeves
     * @param laying how the cloth lies
     * @param material what it is cut from
     * @param area area of one piece as cut, unfolded, allowances included, mm²
     */
    public record Row(
            String size, PieceKind piece, int count, CutInstruction.Laying laying, Material material, double area) {

        /**
         * Area of all of them.
         *
         * @return mm²
         */
        public double totalArea() {
            return count * area;
        }
    }

    /**
     * The cutting list of a set.
     *
     * @param set the pieces
     * @return the list
     */
    public static CuttingList of(PatternSet set) {
        List<Row> rows = new ArrayList<>();
        for (List<Piece> pieces : set.sizes()) {
            for (Piece piece : pieces) {
                double drawn = Points.of(piece.cutLine()).area();
                rows.add(new Row(
                        piece.size(),
                        piece.kind(),
                        piece.cut().count(),
                        piece.cut().laying(),
                        piece.kind().material(),
                        piece.onFold() ? 2 * drawn : drawn));
            }
        }
        return new CuttingList(List.copyOf(rows));
    }

    /**
     * Area of one material in one size, for a pair of sleeves: no length of cloth can be shorter than this over its width.
     *
     * @param size label of the size
     * @param material which material
     * @return mm², 0 if nothing is cut from it
     */
    public double area(String size, Material material) {
        double sum = 0;
        for (Row row : rows) {
            if (row.size().equals(size) && row.material() == material) {
                sum += row.totalArea();
            }
        }
        return sum;
    }
}
