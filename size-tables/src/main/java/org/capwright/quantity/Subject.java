package org.capwright.quantity;

/**
 * What a violation or a finding speaks of: a dimension, an option of a style, a figure of a table. Each package names its own subjects; where one stands in a request
 * is known only to who read the request.
 */
public interface Subject {

    /**
     * The subject by its name.
     *
     * @return for example {@code capHeight}; the same for equal subjects, never blank
     */
    String code();
}
