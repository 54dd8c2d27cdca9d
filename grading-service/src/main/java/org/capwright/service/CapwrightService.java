package org.capwright.service;

import java.sql.SQLException;
import org.capwright.service.store.StoreMove;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.boot.web.server.context.WebServerInitializedEvent;
import org.springframework.context.ApplicationListener;
import org.springframework.context.annotation.Bean;

/** Starts the service. */
@SpringBootApplication
public class CapwrightService {

    private static final String MOVE = "move-store";
    private static final Logger LOG = LoggerFactory.getLogger(CapwrightService.class);

    // Spring makes it.
    CapwrightService() {}

    /**
     * Starts the service, or moves what is kept from one store to another.
     *
     * @param arguments settings in the manner of Spring Boot, for example {@code --server.port=8081}; or {@code move-store} and the settings of two stores
     * @throws SQLException if a store cannot be moved
     */
    public static void main(String[] arguments) throws SQLException {
        if (arguments.length == 3 && arguments[0].equals(MOVE)) {
            StoreMove.copy(arguments[1], arguments[2])
                    .forEach((table, rows) -> LOG.info("{} rows of {} were moved", rows, table));
            return;
        }
        SpringApplication.run(CapwrightService.class, arguments);
    }

    /**
     * Says where the service can be reached, once it can; not where its management can.
     *
     * @param server where it was told to listen
     * @return a listener for the start of the web server
     */
    @Bean
    ApplicationListener<WebServerInitializedEvent> address(ServerProperties server) {
        return event -> {
            if (event.getApplicationContext().getServerNamespace() == null) {
                LOG.info(
                        "Listening on {} (description: /swagger-ui.html, /v3/api-docs)",
                        address(server, event.getWebServer().getPort()));
            }
        };
    }

    static String address(ServerProperties server, int port) {
        boolean encrypted = server.getSsl() != null && server.getSsl().isEnabled();
        String host =
                server.getAddress() == null ? "0.0.0.0" : server.getAddress().getHostAddress();
        return (encrypted ? "https://" : "http://") + (host.contains(":") ? "[" + host + "]" : host) + ":" + port;
    }
}
