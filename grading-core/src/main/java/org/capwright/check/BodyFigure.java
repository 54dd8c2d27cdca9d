package org.capwright.check;

import org.capwright.words.Text;

/**
 * What a sleeve of one size is compared with.
 *
 * @param millimetres girth or length of the body
 * @param spread how far the body may well lie off it, mm: 0 for a figure of the table
 * @param source the table, or the survey where the table has no such row
 */
record BodyFigure(double millimetres, double spread, Text source) {}
