package org.capwright.service.orders;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.capwright.service.http.access.Caller;
import org.capwright.service.store.Databases;
import org.capwright.service.store.Store;
import org.capwright.service.store.StoreMove;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import tools.jackson.databind.json.JsonMapper;

/** What was kept in one kind of database goes on in the other. */
class MovedStoreTest {

    private static final String SIZE = "{\"size\":\"40\"}";

    private static OrderDesk.Taken take(AnnotationConfigApplicationContext service, String key) {
        return service.getBean(OrderDesk.class)
                .take(
                        Caller.LOCAL,
                        KilledWriter.STYLE,
                        service.getBean(JsonMapper.class).readTree(SIZE),
                        KilledWriter.key(key));
    }

    private static long count(AnnotationConfigApplicationContext service, String table) {
        return service.getBean(Store.class)
                .transaction(database -> database.sql("SELECT COUNT(*) FROM " + table)
                        .query(Long.class)
                        .single());
    }

    @ParameterizedTest
    @EnumSource
    void ordersGoOnInTheOtherDatabase(Databases kind) throws Exception {
        String from = kind.empty();
        String to = (kind == Databases.EMBEDDED ? Databases.POSTGRESQL : Databases.EMBEDDED).empty();
        String id;
        List<DrawnFile> files;
        try (AnnotationConfigApplicationContext service = KilledWriter.service(from)) {
            KilledServiceTest.put(service.getBean(Store.class));
            id = take(service, "first").id();
            service.getBean(OrderDesk.class).change(Caller.LOCAL, id, OrderState.CUT);
            files = service.getBean(OrderDesk.class).files(Caller.LOCAL, id, Optional.empty());
            List<String> tables = service.getBean(Store.class)
                    .transaction(database -> database.sql("SELECT LOWER(table_name) FROM information_schema.tables"
                                    + " WHERE LOWER(table_schema) = 'public' AND LOWER(table_name) NOT LIKE 'flyway%'")
                            .query(String.class)
                            .list());
            assertEquals(new TreeSet<>(StoreMove.tables()), new TreeSet<>(tables), "no table is forgotten");
        }
        Map<String, Long> moved = StoreMove.copy(from, to);
        assertEquals(1, moved.get("sleeve_order"));
        assertEquals(2, moved.get("order_state"));
        try (AnnotationConfigApplicationContext service = KilledWriter.service(to)) {
            OrderDesk desk = service.getBean(OrderDesk.class);
            assertEquals(
                    OrderState.CUT.word(), desk.look(Caller.LOCAL, id).order().state());
            List<DrawnFile> same = desk.files(Caller.LOCAL, id, Optional.empty());
            assertEquals(files.size(), same.size());
            for (int i = 0; i < files.size(); i++) {
                assertArrayEquals(
                        files.get(i).bytes(), same.get(i).bytes(), files.get(i).format());
            }
            assertEquals(id, take(service, "first").id(), "sent again it is the same order");
            take(service, "second");
            assertEquals(2, count(service, "sleeve_order"));
            assertEquals(moved.get("audit_entry") + 1, count(service, "audit_entry"), "the trail goes on");
        }
        assertThrows(IllegalArgumentException.class, () -> StoreMove.copy(from, to), "not into a store that is in use");
    }
}
