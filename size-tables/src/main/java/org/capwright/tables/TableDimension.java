package org.capwright.tables;

import java.util.Optional;
import org.capwright.quantity.Subject;

/** A named length that a table can hold: of the body or of a finished garment. */
public sealed interface TableDimension extends Subject permits BodyDimension, GarmentDimension {

    /**
     * The name used in data files and requests.
     *
     * @return the name in camelCase, never empty
     */
    String id();

    @Override
    default String code() {
        return id();
    }

    /**
     * What is measured, in our own words.
     *
     * @return one or two sentences
     */
    String definition();

    /**
     * Finds a dimension of either kind by its name.
     *
     * @param id the name in camelCase, such as {@code upperArmGirth}
     * @return the dimension, or empty when the name is not known
     */
    static Optional<TableDimension> find(String id) {
        Optional<BodyDimension> body = BodyDimension.find(id);
        return body.isPresent()
                ? body.map(TableDimension.class::cast)
                : GarmentDimension.find(id).map(TableDimension.class::cast);
    }
}
