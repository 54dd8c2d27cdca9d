package org.capwright;

/** How many seeded cases a test runs: a sample by default, all of them with {@code mvn -Pthorough}. */
public final class Sample {

    private static final boolean THOROUGH = Boolean.getBoolean("capwright.thorough");

    private Sample() {}

    /** The number of cases to run now. */
    public static int of(int usual, int thorough) {
        return THOROUGH ? thorough : usual;
    }
}
