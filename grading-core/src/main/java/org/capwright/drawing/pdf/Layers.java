package org.capwright.drawing.pdf;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentGroup;
import org.apache.pdfbox.pdmodel.graphics.optionalcontent.PDOptionalContentProperties;
import org.capwright.words.Language;
import org.capwright.words.Text;

/** The layers of a document, one for each size that is drawn, so that any viewer shows or prints a size alone (PDF Reference 1.6, section 4.10). */
final class Layers {

    private final Map<String, String> names = new LinkedHashMap<>();
    private final Language language;

    Layers(Language language) {
        this.language = language;
    }

    /** Name of the layer of a size among the resources of a page. */
    String of(String size) {
        return names.computeIfAbsent(size, key -> "L" + names.size());
    }

    private String named(String size) {
        return Text.of("Size {size}").with("size", size).in(language);
    }

    /** Declares the layers in a document, all of them shown, in the order given first, then in that of drawing. */
    void declare(PDDocument document, Iterable<String> order, PDResources... resources) throws IOException {
        if (names.isEmpty()) {
            return;
        }
        Map<String, PDOptionalContentGroup> groups = new LinkedHashMap<>();
        for (String size : order) {
            if (names.containsKey(size)) {
                groups.put(size, new PDOptionalContentGroup(named(size)));
            }
        }
        names.keySet().forEach(size -> groups.computeIfAbsent(size, key -> new PDOptionalContentGroup(named(key))));
        PDOptionalContentProperties properties = new PDOptionalContentProperties();
        groups.values().forEach(properties::addGroup);
        for (PDResources each : resources) {
            groups.forEach((size, group) -> each.put(COSName.getPDFName(of(size)), group));
        }
        document.getDocumentCatalog().setOCProperties(properties);
    }
}
