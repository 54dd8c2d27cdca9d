package org.capwright.tables;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The published tables that come with the library. They are read once, at the first call. */
public final class SizeTables {

    private SizeTables() {}

    private static final class Holder {
        static final Map<String, SizeTable> TABLES = load();

        private static Map<String, SizeTable> load() {
            Map<String, SizeTable> tables = new LinkedHashMap<>();
            for (String id : TableFile.ids()) {
                tables.put(id, TableFile.read(id));
            }
            return Collections.unmodifiableMap(tables);
        }

        static final List<SizeTable> LIST = Collections.unmodifiableList(new ArrayList<>(TABLES.values()));
    }

    /**
     * All published tables.
     *
     * @return an unmodifiable list in the order of the ids
     */
    public static List<SizeTable> all() {
        return Holder.LIST;
    }

    /**
     * Finds a published table.
     *
     * @param id the id, such as {@code women-en-13402-3-bust}
     * @return the table, or empty when there is none of that id
     */
    public static Optional<SizeTable> find(String id) {
        return Optional.ofNullable(Holder.TABLES.get(id));
    }
}
