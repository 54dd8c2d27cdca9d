/** Writes pictures as SVG: one user unit is one millimetre. */
package org.capwright.drawing.svg;
