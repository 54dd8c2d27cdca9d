/** What is measured: the dimensions of a sleeve, and what else a violation can speak of. */
package org.capwright.measure;
