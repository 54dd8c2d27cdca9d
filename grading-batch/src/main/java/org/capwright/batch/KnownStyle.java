package org.capwright.batch;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.capwright.json.order.StyleDocument;
import org.capwright.json.problem.FoundViolations;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.quantity.Unit;
import org.capwright.words.Language;
import org.capwright.words.Text;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A style that orders are on. What is the same for all orders of a size is drafted once. Not safe for many threads: each task has its own. */
final class KnownStyle {

    private final StyleDocument document;
    private final Map<Integer, Map<String, SizeRunRequest>> drafted = new LinkedHashMap<>();

    KnownStyle(JsonNode tree) {
        StyleDocument.read(tree); // refuses what is wrong before any order is read
        document = StyleDocument.of(tree);
    }

    StyleDocument document() {
        return document;
    }

    ObjectNode run(Optional<Integer> revision) {
        return document.sizeRun(revision.orElse(1));
    }

    /** A run of one size of the style. */
    SizeRunRequest alone(Optional<Integer> revision, String size, Language language) {
        SizeRunRequest whole = SizeRunReader.read(run(revision)).in(language);
        if (!whole.sizes().contains(size)) {
            FoundViolations found = new FoundViolations(Unit.MILLIMETRE);
            found.add(
                    "/size",
                    Text.of("must be one of the sizes {sizes}").with("sizes", Text.names(whole.sizes())),
                    size);
            throw new RefusedRequestException(found.list());
        }
        Map<String, SizeRunRequest> bySize = drafted.computeIfAbsent(revision.orElse(1), absent -> alone(whole));
        return Objects.requireNonNull(bySize.get(size)).in(language);
    }

    private static Map<String, SizeRunRequest> alone(SizeRunRequest whole) {
        Map<String, SizeRunRequest> bySize = new LinkedHashMap<>();
        whole.pieces(whole.graded())
                .patterns()
                .run()
                .sizes()
                .forEach(size -> bySize.put(size.label(), whole.alone(size)));
        return bySize;
    }
}
