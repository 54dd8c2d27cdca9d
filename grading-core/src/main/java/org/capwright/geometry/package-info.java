/**
 * Plane geometry for drafting: points, cubic Bézier segments, piecewise curves, splines. Lengths are millimetres, y points up. All types are immutable
 * and safe to share between threads.
 */
package org.capwright.geometry;
