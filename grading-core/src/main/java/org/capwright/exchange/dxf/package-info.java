/**
 * Drawings as DXF R12 (AC1009), the grade rule table that goes with them, and a linter for such files. Layer and text conventions after ASTM D6673, from
 * memory, no claim of conformity.
 */
package org.capwright.exchange.dxf;
