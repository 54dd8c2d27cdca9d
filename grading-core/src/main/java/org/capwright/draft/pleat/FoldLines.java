package org.capwright.draft.pleat;

/**
 * The three lines of one fold.
 *
 * @param of the fold
 * @param fold the visible crease
 * @param middle the inner crease
 * @param placement where the visible crease is laid
 * @param uncovered depth of the under-layers, next to the inner crease, that no closed edge lies on, mm: it ends before, or turns back over the apex, and the
 *     cut edge goes straight on; 0 for most folds. Above 0 the under-layers stick out of the seam there
 */
public record FoldLines(PleatFold of, PleatLine fold, PleatLine middle, PleatLine placement, double uncovered) {}
