package org.capwright.service.http.traces;

import java.util.List;
import org.springframework.boot.autoconfigure.AutoConfigurationImportFilter;
import org.springframework.boot.autoconfigure.AutoConfigurationMetadata;
import org.springframework.context.EnvironmentAware;
import org.springframework.core.env.Environment;

/** Leaves everything about traces out of a service that is not told where to send them: it starts no slower, and no request makes a span. */
final class TracesWhenAsked implements AutoConfigurationImportFilter, EnvironmentAware {

    private static final String ENDPOINT = "management.opentelemetry.tracing.export.otlp.endpoint";
    private static final List<String> PACKAGES =
            List.of("org.springframework.boot.micrometer.tracing.", "org.springframework.boot.opentelemetry.");

    private boolean asked;

    @Override
    public void setEnvironment(Environment environment) {
        asked = !environment.getProperty(ENDPOINT, "").isBlank();
    }

    @Override
    public boolean[] match(String[] configurations, AutoConfigurationMetadata metadata) {
        boolean[] kept = new boolean[configurations.length];
        for (int i = 0; i < kept.length; i++) {
            String name = configurations[i];
            kept[i] = asked || name == null || PACKAGES.stream().noneMatch(name::startsWith);
        }
        return kept;
    }
}
