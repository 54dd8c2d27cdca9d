/** Plotter files in HP-GL. */
package org.capwright.export.hpgl;
