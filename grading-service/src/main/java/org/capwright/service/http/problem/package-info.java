/** Errors as problem documents (RFC 9457): every one says what is wrong, where, and what would work. */
package org.capwright.service.http.problem;
