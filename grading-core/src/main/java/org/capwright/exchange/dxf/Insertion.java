package org.capwright.exchange.dxf;

/**
 * One insertion of a block, or the drawing itself.
 *
 * @param number counted in the order of the drawing; 0 is the drawing itself
 * @param block name of the block; empty for the drawing itself
 * @param parent number of the insertion that it is part of; 0 for the drawing and what is inserted in it
 */
public record Insertion(int number, String block, int parent) {

    static final Insertion DRAWING = new Insertion(0, "", 0);
}
