package org.capwright.gradeimport;

import org.capwright.geometry.Point;

/** A text of the drawing at its place in millimetres. */
record Words(String layer, Instance instance, int line, Point at, String text) {}
