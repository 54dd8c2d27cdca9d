/**
 * Drafts and grades structured sleeves. {@link org.capwright.StructuredSleeve} is where to begin; beside it stand the types that its results are made of. What lies
 * below (the draft, the pieces, the drawings) is not exported and may change from version to version.
 */
module org.capwright.grading {
    requires java.desktop;
    requires static org.jspecify;
    requires transitive org.capwright.tables;
    requires commons.math3;
    requires org.apache.commons.csv;
    requires org.apache.fontbox;
    requires org.apache.pdfbox;
    requires org.apache.pdfbox.io;
    requires org.locationtech.jts;

    exports org.capwright;
    exports org.capwright.check;
    exports org.capwright.grade;
    exports org.capwright.lay;
    exports org.capwright.measure;
    // What a style in JSON speaks of; no others may rely on it.
    exports org.capwright.draft to
            org.capwright.json;
    exports org.capwright.draft.pleat to
            org.capwright.json;
    exports org.capwright.geometry to
            org.capwright.json;
    exports org.capwright.pattern to
            org.capwright.json;
    exports org.capwright.report to
            org.capwright.json;
}
