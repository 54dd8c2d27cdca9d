package org.capwright.service.http.problem;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.apache.catalina.connector.Request;
import org.apache.catalina.connector.Response;
import org.apache.catalina.valves.ErrorReportValve;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** What the container refuses before Spring hears of it, such as an address that is none, is a problem document as well instead of the container's own page. */
@Component
@Order(Ordered.LOWEST_PRECEDENCE)
final class ContainerProblems implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

    private final JsonMapper mapper;

    ContainerProblems(JsonMapper mapper) {
        this.mapper = mapper;
    }

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addContextCustomizers(
                context -> context.getParent().getPipeline().addValve(new ProblemValve(mapper)));
    }

    /** The last valve before the application: it reports before the container's own does. */
    private static final class ProblemValve extends ErrorReportValve {

        private final JsonMapper mapper;

        ProblemValve(JsonMapper mapper) {
            this.mapper = mapper;
        }

        @Override
        protected void report(Request request, Response response, @Nullable Throwable throwable) {
            if (response.getStatus() < 400 || response.getContentWritten() > 0 || !response.setErrorReported()) {
                return;
            }
            try {
                response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
                response.setHeader("X-Content-Type-Options", "nosniff");
                response.setHeader("Cache-Control", "no-store");
                response.getReporter()
                        .write(new String(
                                mapper.writeValueAsBytes(
                                        ProblemKind.of(response.getStatus()).usual()),
                                StandardCharsets.UTF_8));
                response.finishResponse();
            } catch (IOException e) {
                // The caller has gone away.
            }
        }
    }
}
