/** Published body tables and surveys, each with its source. */
module org.capwright.tables {
    requires static org.jspecify;
    requires commons.math3;
    requires org.apache.commons.csv;

    exports org.capwright.quantity;
    exports org.capwright.tables;
    exports org.capwright.tables.survey;
    exports org.capwright.words;
}
