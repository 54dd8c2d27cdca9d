/** Holds the jumps of a grade against bodies, against one another and against what the trade teaches; drafted here or elsewhere. */
package org.capwright.check;
