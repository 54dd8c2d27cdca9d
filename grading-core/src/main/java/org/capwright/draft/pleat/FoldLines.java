package org.capwright.draft.pleat;

/**
 * The three lines of one fold.
 *
 * @param of the fold
 * @param fold the visible crease
 * @param middle the inner crease
 * @param placement where the visible crease is laid
 */
public record FoldLines(PleatFold of, PleatLine fold, PleatLine middle, PleatLine placement) {}
