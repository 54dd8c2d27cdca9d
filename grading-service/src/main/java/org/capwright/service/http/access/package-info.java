/** Who calls, and what a caller may do. */
package org.capwright.service.http.access;
