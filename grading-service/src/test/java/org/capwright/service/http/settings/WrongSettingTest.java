package org.capwright.service.http.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.UnsatisfiedDependencyException;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.diagnostics.FailureAnalyzer;
import org.springframework.context.annotation.AnnotationConfigApplicationContext;
import org.springframework.core.env.MapPropertySource;
import org.springframework.core.io.support.SpringFactoriesLoader;

/** What is wrong with a setting is said in a sentence that names it, as docs/configuration.md promises. */
class WrongSettingTest {

    /** Takes a setting as a yes or no. */
    static final class Switch {
        Switch(@Value("${capwright.webhooks-to-private-networks}") boolean on) {
            assert on;
        }
    }

    private static String said(Throwable failure) {
        List<FailureAnalyzer> analyzers = List.of(new UnreadSettingAnalysis(), new WrongSettingAnalysis());
        List<String> asked =
                SpringFactoriesLoader.forDefaultResourceLocation()
                        .load(FailureAnalyzer.class, (type, name, wrong) -> {})
                        .stream()
                        .map(analyzer -> analyzer.getClass().getName())
                        .toList();
        analyzers.forEach(
                analyzer -> assertTrue(asked.contains(analyzer.getClass().getName()), asked.toString()));
        return analyzers.stream()
                .map(analyzer -> analyzer.analyze(failure))
                .filter(analysis -> analysis != null)
                .findFirst()
                .orElseThrow()
                .getDescription();
    }

    @ParameterizedTest
    @ValueSource(strings = {"2years", "", "-P7D", "P7"})
    void aDurationThatIsNone(String text) {
        Throwable failure =
                assertThrows(WrongSettingException.class, () -> Durations.read("capwright.keep-batches", text, "P7D"));
        assertEquals(
                "capwright.keep-batches must be a duration such as P7D, not " + text + ".",
                said(new IllegalStateException("a bean could not be made", failure)));
    }

    @Test
    void aYesOrNoThatIsNone() {
        try (AnnotationConfigApplicationContext context = new AnnotationConfigApplicationContext()) {
            context.getEnvironment()
                    .getPropertySources()
                    .addFirst(new MapPropertySource(
                            "arguments", Map.of("capwright.webhooks-to-private-networks", "maybe")));
            context.register(Switch.class);
            assertEquals(
                    "capwright.webhooks-to-private-networks must be true or false, not maybe.",
                    said(assertThrows(UnsatisfiedDependencyException.class, context::refresh)));
        }
    }
}
