package org.capwright.draft;

/** How an under-sleeve is shaped at the elbow. */
public enum ElbowShaping {
    /** Not at all: both sides taper alike. */
    TAPERED("tapered"),
    /** The sleeve below the elbow is turned forward; a dart on the back underarm seam takes up what the turn opens. */
    ELBOW_DART("elbowDart"),
    /** The sleeve below the elbow is turned forward; the back underarm seam is longer by what the turn opens and is eased to the front one. */
    EASED_SEAM("easedSeam");

    private final String label;

    ElbowShaping(String label) {
        this.label = label;
    }

    /**
     * The name of the shaping in a request.
     *
     * @return for example {@code elbowDart}
     */
    public String label() {
        return label;
    }
}
