/** {@code POST /v1/checks}: holds a grade against bodies, drafted here from a request or read from a spec table or outlines of a style drawn elsewhere. */
package org.capwright.service.checks;
