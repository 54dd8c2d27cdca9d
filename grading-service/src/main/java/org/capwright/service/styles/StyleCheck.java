package org.capwright.service.styles;

import org.capwright.json.order.StyleDocument;
import org.capwright.json.style.SizeRunRequest;
import org.capwright.service.sizerun.SizeRunService;
import tools.jackson.databind.JsonNode;

/** Looks at a style before it is kept. */
final class StyleCheck {

    private StyleCheck() {}

    /**
     * Reads a body and drafts every size, so that what is kept can be cut.
     *
     * @param tree the body
     * @return the size run
     * @throws org.capwright.json.problem.RefusedRequestException with everything that is wrong
     */
    static SizeRunRequest drafted(JsonNode tree) {
        SizeRunRequest read = StyleDocument.read(tree);
        SizeRunService.draft(read);
        return read;
    }
}
