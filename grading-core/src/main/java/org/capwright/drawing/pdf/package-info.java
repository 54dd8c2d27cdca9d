/** Writes pictures as PDF, with the fonts they use. */
package org.capwright.drawing.pdf;
