/**
 * The parametric draft of a structured sleeve: base sleeve, overlay and under-sleeve, one half at a time. The origin is where the fold line meets the bicep
 * line, x runs along the bicep line to the underarm point, y up the fold line to the apex.
 */
package org.capwright.draft;
