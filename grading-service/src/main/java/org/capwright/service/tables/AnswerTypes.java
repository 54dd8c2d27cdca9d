package org.capwright.service.tables;

/** What is answered, for the API description. */
public final class AnswerTypes {

    /** The list of tables. */
    public static final Class<?> LISTING = SizeTableAnswer.Listing.class;

    /** One table. */
    public static final Class<?> TABLE = SizeTableAnswer.class;

    private AnswerTypes() {}
}
