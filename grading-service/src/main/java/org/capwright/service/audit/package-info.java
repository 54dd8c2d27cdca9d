/** {@code GET /v1/audit}: who did what with styles, orders and keys. */
package org.capwright.service.audit;
