/** PDF at true scale: pieces on tiled sheets or on one roll, with a cover that says what they are. */
package org.capwright.drawing.pdf;
