/** What is measured: the dimensions of a sleeve, units at the boundary, and what is said when a measure cannot work. */
package org.capwright.measure;
