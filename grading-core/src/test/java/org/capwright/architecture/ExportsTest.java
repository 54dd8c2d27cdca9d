package org.capwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.InputStream;
import java.lang.module.ModuleDescriptor;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.capwright.StructuredSleeve;
import org.junit.jupiter.api.Test;

/** What a user of the module sees stays small enough to be read in one sitting. */
class ExportsTest {

    private static final int MOST_TYPES = 60;

    private static Set<String> exported() throws Exception {
        Path classes = Path.of(StructuredSleeve.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI());
        try (InputStream described = Files.newInputStream(classes.resolve("module-info.class"))) {
            return ModuleDescriptor.read(described).exports().stream()
                    .filter(export -> !export.isQualified())
                    .map(ModuleDescriptor.Exports::source)
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    @Test
    void theFrontDoorAndWhatItsResultsAreMadeOfIsExported() throws Exception {
        assertEquals(
                Set.of(
                        "org.capwright",
                        "org.capwright.check",
                        "org.capwright.grade",
                        "org.capwright.lay",
                        "org.capwright.measure"),
                exported());
    }

    /** Types of their own files; a nested one belongs to the type it stands in. */
    @Test
    void noMoreThanSixtyTypesAreExported() throws Exception {
        Set<String> exported = exported();
        Set<String> types = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.capwright").stream()
                        .filter(type -> exported.contains(type.getPackageName()))
                        .filter(type -> type.getModifiers().contains(JavaModifier.PUBLIC) && !type.isNestedClass())
                        .map(JavaClass::getName)
                        .collect(Collectors.toCollection(TreeSet::new));
        assertTrue(types.contains("org.capwright.StructuredSleeve"), types.toString());
        assertTrue(types.size() <= MOST_TYPES, types.size() + " types: " + types);
    }
}
