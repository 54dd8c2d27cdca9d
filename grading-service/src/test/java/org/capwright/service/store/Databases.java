package org.capwright.service.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;

/** Both databases that a store can be: every test of what is kept runs on each. */
public enum Databases {
    /** The embedded one. */
    EMBEDDED {
        @Override
        public String empty() {
            try {
                return Files.createTempDirectory("capwright-store").toString();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    },
    /** A server. */
    POSTGRESQL {
        @Override
        public String empty() {
            return PostgresServer.newDatabase();
        }
    };

    /** The setting for a new, empty store. */
    public abstract String empty();
}
