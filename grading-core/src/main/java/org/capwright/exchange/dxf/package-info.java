/**
 * Drawings as DXF R12 (AC1009), written; as ASCII DXF of release 12 or later, read; the grade rule table that goes with them, and a linter for such files. Layer and text conventions after ASTM D6673, from
 * memory, no claim of conformity.
 */
package org.capwright.exchange.dxf;
