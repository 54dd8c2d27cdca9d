/** What every module shares: units at the boundary, and what is said of a measure that cannot work. */
package org.capwright.quantity;
