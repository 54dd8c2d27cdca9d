/** Where styles and orders are kept: an embedded database in a folder, or PostgreSQL. It is opened by the first call that needs it; calls that keep nothing never do. */
package org.capwright.service.store;
