/** One model of a picture: what can be drawn, in which strokes, colours and letters. It knows nothing of patterns. */
package org.capwright.drawing;
