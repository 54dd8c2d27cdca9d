package org.capwright.service;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** One room for HTTP, one for each call. */
class RoomsTest {

    private static final String SERVICE = "org.capwright.service.";

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.capwright.service");

    /**
     * What a call may know of others. A size table may stand in the request of any call, so all know how one is read. Checks and rules take a size run within their requests,
     * made-to-measure turns its request into one, materials takes one as it is.
     * A style that is kept is a size run with the ease of made to measure.
     * The page states the ranges of the two requests that it has fields for.
     */
    private static final Map<String, Set<String>> KNOWN = Map.ofEntries(
            Map.entry("page", Set.of("sizerun", "madetomeasure")),
            Map.entry("tables", Set.of()),
            Map.entry("store", Set.of()),
            Map.entry("keys", Set.of("store")),
            Map.entry("audit", Set.of("store")),
            Map.entry("jobs", Set.of("store")),
            Map.entry("webhooks", Set.of("jobs", "store")),
            Map.entry("orders", Set.of("jobs", "webhooks", "store", "styles", "sizerun", "madetomeasure")),
            Map.entry("styles", Set.of("store", "sizerun", "madetomeasure")),
            Map.entry("sizerun", Set.of("tables")),
            Map.entry("materials", Set.of("sizerun")),
            Map.entry("madetomeasure", Set.of("sizerun", "tables")),
            Map.entry("checks", Set.of("sizerun", "tables")),
            Map.entry("rules", Set.of("sizerun", "tables")));

    /** The packages of the engine, of its JSON and of the tables that the service stands on. A new one here widens what they must keep stable. */
    private static final Set<String> ENGINE = Set.of(
            "org.capwright.check",
            "org.capwright.draft",
            "org.capwright.draft.pleat",
            "org.capwright.exchange",
            "org.capwright.exchange.table",
            "org.capwright.geometry",
            "org.capwright.grade",
            "org.capwright.grade.derive",
            "org.capwright.gradeimport",
            "org.capwright.json",
            "org.capwright.json.madetomeasure",
            "org.capwright.json.order",
            "org.capwright.json.problem",
            "org.capwright.json.schema",
            "org.capwright.json.style",
            "org.capwright.json.tables",
            "org.capwright.lay",
            "org.capwright.measure",
            "org.capwright.pattern",
            "org.capwright.quantity",
            "org.capwright.report",
            "org.capwright.tables",
            "org.capwright.tables.survey",
            "org.capwright.words");

    @Test
    void everyRoomIsListed() {
        Set<String> rooms = CLASSES.stream()
                .map(JavaClass::getPackageName)
                .filter(name -> name.startsWith(SERVICE))
                .map(name -> name.substring(SERVICE.length()).split("\\.")[0])
                .filter(name -> !name.equals("http"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(new TreeSet<>(KNOWN.keySet()), rooms);
    }

    @Test
    void roomsAreFreeOfCycles() {
        slices().matching(SERVICE + "(*)..").should().beFreeOfCycles().check(CLASSES);
        slices().matching(SERVICE + "http.(*)..").should().beFreeOfCycles().check(CLASSES);
    }

    static Stream<String> calls() {
        return KNOWN.keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("calls")
    void httpKnowsNoCall(String call) {
        noClasses()
                .that()
                .resideInAPackage(SERVICE + "http..")
                .should()
                .dependOnClassesThat()
                .resideInAPackage(SERVICE + call + "..")
                .check(CLASSES);
    }

    @ParameterizedTest
    @MethodSource("calls")
    void callsKnowNoOthersThanArgued(String call) {
        String[] others = KNOWN.keySet().stream()
                .filter(other -> !other.equals(call) && !KNOWN.get(call).contains(other))
                .map(other -> SERVICE + other + "..")
                .toArray(String[]::new);
        noClasses()
                .that()
                .resideInAPackage(SERVICE + call + "..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(others)
                .check(CLASSES);
    }

    @Test
    void theEngineIsUsedWhereItIsOpen() {
        Set<String> used = CLASSES.stream()
                .flatMap(type -> type.getDirectDependenciesFromSelf().stream())
                .map(dependency ->
                        dependency.getTargetClass().getBaseComponentType().getPackageName())
                .filter(name -> name.startsWith("org.capwright.") && !name.startsWith("org.capwright.service"))
                .collect(Collectors.toCollection(TreeSet::new));
        used.removeAll(ENGINE);
        assertEquals(Set.of(), used);
    }
}
