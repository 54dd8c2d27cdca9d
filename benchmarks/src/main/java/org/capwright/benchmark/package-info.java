/** What the engine costs, compared with a straightforward version of the same work in the same run. */
package org.capwright.benchmark;
