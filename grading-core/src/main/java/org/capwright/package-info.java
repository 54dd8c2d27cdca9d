/**
 * The front door of the library: from a style to graded pieces and files. {@link org.capwright.StructuredSleeve} is where to begin. Everything here is immutable and may
 * be shared between threads. What cannot be drafted is refused by {@link org.capwright.quantity.InvalidMeasuresException}, with everything that is wrong and the range that
 * would work.
 */
@org.jspecify.annotations.NullMarked
package org.capwright;
