/** What people read and cut from: nest, pieces, lay, jumps and grade, drawn once into the model of a picture and written as SVG or PDF. */
package org.capwright.report;
