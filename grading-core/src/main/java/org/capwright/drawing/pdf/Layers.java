package org.capwright.drawing.pdf;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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

    /**
     * The layers as they are declared, all of them shown.
     *
     * @param resources the layers by their names, as an entry of a dictionary of resources
     * @param catalog as an entry of the catalog
     */
    record Declared(String resources, String catalog) {}

    /** Declares the layers among the objects of a file, in the order given first, then in that of drawing. */
    Declared declare(List<String> order, PdfObjects objects) {
        if (names.isEmpty()) {
            return new Declared("", "");
        }
        Set<String> sizes = new LinkedHashSet<>(order);
        sizes.retainAll(names.keySet());
        sizes.addAll(names.keySet());
        StringBuilder resources = new StringBuilder();
        StringBuilder groups = new StringBuilder();
        for (String size : sizes) {
            String group = PdfObjects.reference(objects.add("<</Type/OCG/Name" + PdfObjects.text(named(size)) + ">>"));
            resources.append('/').append(of(size)).append(' ').append(group);
            groups.append(group).append(' ');
        }
        return new Declared(
                "/Properties<<" + resources + ">>",
                "/OCProperties<</OCGs[" + groups + "]/D<</Name(Top)/Order[" + groups + "]>>>>");
    }
}
