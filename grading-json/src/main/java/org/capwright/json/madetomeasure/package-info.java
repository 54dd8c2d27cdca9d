/** One wearer's measurements, a style and its ease as JSON: read, judged together, and turned into a run of one size. */
package org.capwright.json.madetomeasure;
