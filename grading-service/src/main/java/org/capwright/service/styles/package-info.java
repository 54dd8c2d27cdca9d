/** {@code /v1/styles}: styles that are kept. A style is the body of a size run, and the ease by which it is made to measure; every change of it is a revision that stays as it is. */
package org.capwright.service.styles;
