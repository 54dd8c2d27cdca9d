/** The front door for styles that are kept as JSON: read one, draft it, write it. */
package org.capwright.json;
