/** Reads grades made elsewhere, from spec tables and outline drawings, and tells how it understood them. */
package org.capwright.gradeimport;
