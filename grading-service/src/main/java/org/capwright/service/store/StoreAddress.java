package org.capwright.service.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.capwright.service.http.settings.WrongSettingException;

/** Where the store is, as one setting says it. */
sealed interface StoreAddress {

    /** Nothing is kept. */
    record Off() implements StoreAddress {}

    /** A database that can be opened. */
    sealed interface Database extends StoreAddress {

        String url();

        String user();

        /** Whether there may be something in it already. */
        boolean begun();

        /** The words of the database for what the standard has no common one for; the migrations ask for them. */
        Map<String, String> words();
    }

    /**
     * An embedded database.
     *
     * @param folder its folder
     */
    record Folder(Path folder) implements Database {

        /** A commit is written before it is acknowledged: without WRITE_DELAY=0 half a second of orders would be lost with the process. */
        @Override
        public String url() {
            return "jdbc:h2:file:" + folder.toAbsolutePath().resolve("capwright")
                    + ";MODE=PostgreSQL;DATABASE_TO_LOWER=TRUE;WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;LOCK_TIMEOUT=10000";
        }

        @Override
        public String user() {
            return "capwright";
        }

        @Override
        public boolean begun() {
            return Files.exists(folder.resolve("capwright.mv.db"));
        }

        @Override
        public Map<String, String> words() {
            return Map.of("bytes", "BINARY LARGE OBJECT", "line", "VARBINARY(65600)");
        }
    }

    /**
     * A PostgreSQL server.
     *
     * @param url JDBC address, with user and password where they are needed
     */
    record Server(String url) implements Database {

        @Override
        public String user() {
            return "";
        }

        @Override
        public boolean begun() {
            return true;
        }

        @Override
        public Map<String, String> words() {
            return Map.of("bytes", "BYTEA", "line", "BYTEA");
        }
    }

    /** Reads the setting. */
    static StoreAddress of(String setting) {
        String given = setting.strip();
        if (given.isEmpty() || given.equals("off")) {
            return new Off();
        } else if (given.startsWith("jdbc:postgresql:")) {
            return new Server(given);
        } else if (given.startsWith("jdbc:") || given.contains(";")) {
            throw new WrongSettingException(
                    "capwright.store must be a folder, an address that begins with jdbc:postgresql:, or off");
        }
        return new Folder(Path.of(given));
    }
}
