package org.capwright.architecture;

import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The way of the data is the way of the folders: a lower package never knows a higher one. */
class LayersTest {

    private static final JavaClasses CORE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.capwright");

    /** Lowest first; each may use those before it. */
    private static final List<String> ROOMS = List.of(
            "words",
            "tables",
            "measure",
            "geometry",
            "draft",
            "grade",
            "pattern",
            "lay",
            "exchange",
            "check",
            "gradeimport",
            "drawing",
            "report");

    @Test
    void dependenciesGoOneWay() {
        for (int i = 0; i < ROOMS.size(); i++) {
            String[] higher = ROOMS.subList(i + 1, ROOMS.size()).stream()
                    .map(LayersTest::room)
                    .toArray(String[]::new);
            if (higher.length > 0) {
                ArchRuleDefinition.noClasses()
                        .that()
                        .resideInAPackage(room(ROOMS.get(i)))
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(higher)
                        .check(CORE);
            }
        }
    }

    /** The front door stands above all. */
    @Test
    void noRoomKnowsTheFrontDoor() {
        ArchRuleDefinition.noClasses()
                .that()
                .resideOutsideOfPackage("org.capwright")
                .should()
                .dependOnClassesThat()
                .resideInAPackage("org.capwright")
                .check(CORE);
    }

    private static String room(String name) {
        return "org.capwright." + name + "..";
    }

    @Test
    void packagesAreFreeOfCycles() {
        slices().matching("org.capwright.(*)..").should().beFreeOfCycles().check(CORE);
        slices().matching("org.capwright.exchange.(*)..")
                .should()
                .beFreeOfCycles()
                .check(CORE);
    }

    @Test
    void coreKnowsNoFramework() {
        ArchRuleDefinition.noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.springframework..", "com.fasterxml..", "tools.jackson..", "jakarta..")
                .check(CORE);
    }

    @Test
    void namesSayWhatAClassIs() {
        ArchRuleDefinition.noClasses()
                .should()
                .haveSimpleNameEndingWith("Util")
                .orShould()
                .haveSimpleNameEndingWith("Utils")
                .orShould()
                .haveSimpleNameEndingWith("Helper")
                .orShould()
                .haveSimpleNameEndingWith("Manager")
                .orShould()
                .haveSimpleNameEndingWith("Impl")
                .check(CORE);
    }
}
