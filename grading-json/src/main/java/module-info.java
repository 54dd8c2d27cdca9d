/** Styles as JSON, the same that the service takes: {@link org.capwright.json.StyleFile} reads and writes them for the engine, which itself needs no JSON. */
module org.capwright.json {
    requires static io.swagger.v3.oas.annotations;
    requires static org.jspecify;
    requires transitive org.capwright.grading;
    requires transitive tools.jackson.databind;

    exports org.capwright.json;
    exports org.capwright.json.problem;
}
