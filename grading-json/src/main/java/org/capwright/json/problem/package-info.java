/** What is wrong with a request, and at which of its fields. */
package org.capwright.json.problem;
