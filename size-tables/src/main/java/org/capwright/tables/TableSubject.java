package org.capwright.tables;

import org.capwright.quantity.Subject;

/** What of a size table, or of a question put to one, a violation speaks of. Positions count from 0. */
public sealed interface TableSubject extends Subject {

    /** A field of a table as its user describes it. */
    enum Field implements TableSubject {
        /** The name it is found by. */
        ID("id"),
        /** What it is called. */
        TITLE("title"),
        /** Where its figures come from. */
        SOURCE("source"),
        /** On what terms they may be used. */
        LICENCE("licence"),
        /** Whose figures they are. */
        FIGURE_TYPE("figureType"),
        /** Who was measured. */
        POPULATION("population"),
        /** Unit of its figures. */
        UNIT("unit"),
        /** The dimension that orders its sizes. */
        KEY("key"),
        /** Its sizes, smallest first. */
        SIZES("sizes"),
        /** Its rows, one per dimension. */
        ROWS("rows");

        private final String code;

        Field(String code) {
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }

    /**
     * A size, by its position.
     *
     * @param position among the sizes, 0 or more
     */
    record Size(int position) implements TableSubject {
        @Override
        public String code() {
            return "sizes " + position;
        }
    }

    /**
     * The dimension of a row.
     *
     * @param row position of the row, 0 or more
     */
    record RowDimension(int row) implements TableSubject {
        @Override
        public String code() {
            return "dimension of row " + row;
        }
    }

    /**
     * All values of a row.
     *
     * @param row position of the row, 0 or more
     */
    record RowValues(int row) implements TableSubject {
        @Override
        public String code() {
            return "values of row " + row;
        }
    }

    /**
     * One value of a row.
     *
     * @param row position of the row, 0 or more
     * @param size position of the size, 0 or more
     */
    record Figure(int row, int size) implements TableSubject {
        @Override
        public String code() {
            return "value " + size + " of row " + row;
        }
    }

    /**
     * An argument of a question put to a table or a survey.
     *
     * @param code its name
     */
    record Argument(String code) implements TableSubject {}
}
