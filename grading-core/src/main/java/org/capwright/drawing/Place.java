package org.capwright.drawing;

/** How a line of text lies about its place. */
public enum Place {
    /** It begins there. */
    LEFT,
    /** Its middle is there. */
    CENTRE,
    /** It ends there. */
    RIGHT
}
