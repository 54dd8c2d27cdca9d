/** What the engine costs, held against a straightforward version of the same work in the same run. */
package org.capwright.benchmark;
