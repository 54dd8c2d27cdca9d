/** Plotter files in HP-GL. */
package org.capwright.exchange.hpgl;
