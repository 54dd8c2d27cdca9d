package org.capwright.architecture;

import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import org.junit.jupiter.api.Test;

/** The way of the data is the way of the folders: a lower package never knows a higher one. */
class LayersTest {

    private static final JavaClasses CORE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.capwright");

    @Test
    void dependenciesGoOneWay() {
        layeredArchitecture()
                .consideringOnlyDependenciesInLayers()
                .layer("tables")
                .definedBy("org.capwright.tables..")
                .layer("measure")
                .definedBy("org.capwright.measure..")
                .layer("geometry")
                .definedBy("org.capwright.geometry..")
                .layer("draft")
                .definedBy("org.capwright.draft..")
                .layer("grade")
                .definedBy("org.capwright.grade..")
                .layer("pattern")
                .definedBy("org.capwright.pattern..")
                .layer("check")
                .definedBy("org.capwright.check..")
                .layer("export")
                .definedBy("org.capwright.export..")
                .whereLayer("export")
                .mayNotBeAccessedByAnyLayer()
                .whereLayer("check")
                .mayOnlyBeAccessedByLayers("export")
                .whereLayer("pattern")
                .mayOnlyBeAccessedByLayers("check", "export")
                .whereLayer("grade")
                .mayOnlyBeAccessedByLayers("pattern", "check", "export")
                .whereLayer("draft")
                .mayOnlyBeAccessedByLayers("grade", "pattern", "check", "export")
                .whereLayer("tables")
                .mayOnlyBeAccessedByLayers("grade", "check", "export")
                .check(CORE);
    }

    @Test
    void packagesAreFreeOfCycles() {
        slices().matching("org.capwright.(*)..").should().beFreeOfCycles().check(CORE);
        slices().matching("org.capwright.export.(*)..")
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
