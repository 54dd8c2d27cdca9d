/** {@code GET /v1/size-tables}: the published size tables with their increments and where every value comes from. */
package org.capwright.service.tables;
