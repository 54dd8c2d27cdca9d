/** Pattern pieces: net and cut lines, notches, grain, cut instructions, seams that belong together, materials. */
package org.capwright.pattern;
