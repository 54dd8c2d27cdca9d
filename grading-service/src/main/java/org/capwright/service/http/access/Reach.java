package org.capwright.service.http.access;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.boot.web.server.autoconfigure.ServerProperties;
import org.springframework.stereotype.Component;

/** Without keys everybody who can reach the service may do everything, so it then answers this machine alone. */
@Component
final class Reach implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {

    private final ServerProperties server;
    private final Doorkeeper doorkeeper;

    Reach(ServerProperties server, Doorkeeper doorkeeper) {
        this.server = server;
        this.doorkeeper = doorkeeper;
    }

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        boolean here = server.getAddress() != null && server.getAddress().isLoopbackAddress();
        if (!here && !doorkeeper.closed()) {
            throw new OpenToAllException(
                    server.getAddress() == null
                            ? "every address"
                            : server.getAddress().getHostAddress());
        }
    }
}
