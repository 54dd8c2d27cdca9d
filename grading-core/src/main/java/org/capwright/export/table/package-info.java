/** The spec table as comma-separated values. */
package org.capwright.export.table;
