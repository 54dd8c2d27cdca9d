/** Drawings at true scale as SVG: one user unit is one millimetre. */
package org.capwright.drawing.svg;
