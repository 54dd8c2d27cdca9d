/** A size table as JSON: by the id of a published one, or of one's own. */
package org.capwright.json.tables;
