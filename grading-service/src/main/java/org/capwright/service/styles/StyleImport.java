package org.capwright.service.styles;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.Unit;
import org.capwright.service.store.Fingerprint;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;

/** Reads a document of styles; every revision in it is checked as if it were put by itself. */
final class StyleImport {

    private final FoundViolations found = new FoundViolations(Unit.MILLIMETRE);

    private StyleImport() {}

    static List<List<StyleRevision>> read(JsonNode document) {
        StyleImport reading = new StyleImport();
        List<List<StyleRevision>> styles = reading.styles(document);
        reading.found.refuse();
        return styles;
    }

    private List<List<StyleRevision>> styles(JsonNode document) {
        JsonNode list = document.path("styles");
        if (!list.isArray()) {
            found.add("/styles", "must be the list of styles of an export");
            return List.of();
        }
        List<List<StyleRevision>> styles = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            styles.add(style(list.get(i), "/styles/" + i));
        }
        return styles;
    }

    private List<StyleRevision> style(JsonNode style, String where) {
        String id = style.path("id").asStringOpt().orElse("");
        if (!StyleId.right(id)) {
            found.add(where + "/id", StyleId.REASON, id);
        }
        JsonNode list = style.path("revisions");
        if (!list.isArray() || list.isEmpty()) {
            found.add(where + "/revisions", "must be a list of the revisions, oldest first");
        }
        List<StyleRevision> revisions = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            String at = where + "/revisions/" + i;
            JsonNode revision = list.get(i);
            if (revision.path("revision").asInt(0) != i + 1) {
                found.add(
                        at + "/revision",
                        Text.of("must be {number}, as revisions are counted from 1 without a gap")
                                .with("number", i + 1));
            }
            read(id, i + 1, revision, at, style.path("archived").asBoolean(false))
                    .ifPresent(revisions::add);
        }
        return revisions;
    }

    private Optional<StyleRevision> read(String id, int number, JsonNode revision, String at, boolean archived) {
        Optional<Instant> madeAt = time(revision.path("madeAt").asStringOpt().orElse(""), at);
        String madeBy = revision.path("madeBy").asStringOpt().orElse("").strip();
        if (madeBy.isEmpty() || madeBy.length() > 100) {
            found.add(at + "/madeBy", "must be a text of 1 to 100 characters");
        }
        JsonNode style = revision.path("style");
        try {
            SizeRunRequest checked = StyleCheck.drafted(style);
            String body = style.toString();
            return madeAt.map(time -> new StyleRevision(
                    id, number, checked.title().style(), body, Fingerprint.of(body), time, madeBy, archived));
        } catch (RefusedRequestException e) {
            e.violations()
                    .forEach(violation -> found.add(
                            at + "/style" + violation.field(),
                            violation.reason(),
                            violation.value().orElse("")));
            return Optional.empty();
        }
    }

    private Optional<Instant> time(String text, String at) {
        try {
            return Optional.of(Instant.parse(text));
        } catch (DateTimeParseException e) {
            found.add(at + "/madeAt", "must be a time such as 2026-11-26T05:00:00Z (RFC 3339, UTC)", text);
            return Optional.empty();
        }
    }
}
