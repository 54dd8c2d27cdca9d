package org.capwright.service;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the service. */
@SpringBootApplication
public class CapwrightService {

    /**
     * Starts the service.
     *
     * @param arguments settings in the manner of Spring Boot, for example {@code --server.port=8081}
     */
    public static void main(String[] arguments) {
        SpringApplication.run(CapwrightService.class, arguments);
    }
}
