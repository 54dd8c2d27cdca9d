/** The spec table as comma-separated values. */
package org.capwright.exchange.table;
