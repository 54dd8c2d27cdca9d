/** {@code POST /v1/grade-rules}: grade rules that follow the growth of bodies. */
package org.capwright.service.rules;
