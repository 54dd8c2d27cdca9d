/**
 * Pleats of an overlay's top edge: how many, how deep, where they are folded and where they land on the armhole seam, and the cut edge trued so that every
 * under-layer is caught in that seam. Lengths are millimetres. Positions on the flat edge are arc lengths from its front underarm end, positions on the
 * finished seam are lengths from the front end of the attach span.
 */
package org.capwright.draft.pleat;
