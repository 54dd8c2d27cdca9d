package org.capwright.service.http.access;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a key is good for. */
public enum Scope {
    /** Drafts and checks, which keep nothing, and looks at what is kept. */
    READ,
    /** Changes styles. */
    STYLE,
    /** Takes orders and carries them on. */
    ORDER,
    /** Looks after keys, erases measurements, reads the audit trail. */
    ADMIN;

    /**
     * The name of the scope in requests and answers.
     *
     * @return for example {@code style}
     */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The scope of a name.
     *
     * @param word a name
     * @return the scope, if there is one
     */
    public static Optional<Scope> find(String word) {
        return Stream.of(values()).filter(scope -> scope.word().equals(word)).findFirst();
    }
}
