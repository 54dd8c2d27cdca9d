package org.capwright.draft.pleat;

/** How the folds of a pleat lie to each other. */
public enum PleatKind {
    /** One fold, pressed to one side. Takes up twice its depth. */
    KNIFE(1),
    /** Two knife folds turned away from each other, a panel on top between them. Takes up four times its depth. */
    BOX(2),
    /** Two knife folds turned towards each other, meeting on one placement line. Takes up four times its depth. */
    INVERTED(2);

    private final int folds;

    PleatKind(int folds) {
        this.folds = folds;
    }

    /**
     * How many knife folds make one pleat.
     *
     * @return 1 or 2
     */
    public int folds() {
        return folds;
    }

    /**
     * The length of edge one pleat takes up: twice its depth for each fold. Source: National Instructional Media Institute (Government of India), CITS Dress
     * Making, Trade Practical, pages 203 and 204.
     *
     * @param depth depth of a fold in mm, 0 or more
     * @return millimetres of the flat edge
     */
    public double takeUp(double depth) {
        return 2 * folds * depth;
    }
}
