package org.capwright.service.tables;

/** What is answered, for the API description. */
public final class AnswerTypes {

    /** The list of tables. */
    public static final Class<?> LISTING = SizeTableAnswer.Listing.class;

    /** One table. */
    public static final Class<?> TABLE = SizeTableAnswer.class;

    /** The figures of one body. */
    public static final Class<?> FIGURES = SizeTableAnswer.Figures.class;

    private AnswerTypes() {}
}
