package org.capwright.service.keys;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.access.Doorkeeper;
import org.capwright.service.http.access.Scope;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.http.settings.WrongSettingException;
import org.capwright.service.store.AuditTrail;
import org.capwright.service.store.Fingerprint;
import org.capwright.service.store.Store;
import org.capwright.service.store.Times;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * The keys of all tenants. A key is {@code cw_}, or {@code cwp_} if it is publishable, an id, and a secret of 256 random bits; of the secret only the SHA-256 is kept, which cannot be turned back for want of anything to guess.
 */
@Component
final class KeyRing implements Doorkeeper {

    private static final int SHORTEST_OPERATOR_KEY = 32;
    private static final int ID_BYTES = 8;
    private static final int SECRET_BYTES = 32;
    private static final Pattern TENANT = Pattern.compile("[a-z0-9][a-z0-9-]{0,63}");
    private static final Pattern KEY = Pattern.compile("cwp?_([0-9a-f]{16})_([A-Za-z0-9_-]{43})");
    private static final String SELECT = "SELECT id, tenant, name, scopes, made_at, expires_at FROM api_key";

    private final SecureRandom random = new SecureRandom();
    private final Store store;
    private final Tokens tokens;
    private final String operatorKey;

    KeyRing(Store store, Tokens tokens, @Value("${capwright.operator-key}") String operatorKey) {
        this.store = store;
        this.tokens = tokens;
        this.operatorKey = operatorKey.strip();
        if (!this.operatorKey.isEmpty() && this.operatorKey.length() < SHORTEST_OPERATOR_KEY) {
            throw new WrongSettingException("capwright.operator-key must have " + SHORTEST_OPERATOR_KEY
                    + " characters or more; it has " + this.operatorKey.length());
        }
    }

    @Override
    public boolean closed() {
        return !operatorKey.isEmpty() || tokens.isOn();
    }

    @Override
    public Optional<Caller> caller(String key) {
        if (!operatorKey.isEmpty() && same(operatorKey, key)) {
            return Optional.of(Caller.OPERATOR);
        }
        Matcher parts = KEY.matcher(key);
        return parts.matches()
                ? store.transaction(database -> find(database, parts.group(1), parts.group(2)))
                        .map(found -> new Caller(found.tenant(), found.name(), found.scopes(), found.origins()))
                : tokens.caller(key);
    }

    /** Whether a text can be the name of a tenant. */
    static boolean isTenant(String text) {
        return TENANT.matcher(text).matches();
    }

    /** In a time that tells nothing of where they differ. */
    private static boolean same(String one, String other) {
        return MessageDigest.isEqual(one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
    }

    private static Optional<StoredKey> find(JdbcClient database, String id, String secret) {
        Optional<String> sha256 = database.sql("SELECT secret_sha256 FROM api_key WHERE id = ? AND expires_at > ?")
                .params(id, Times.now())
                .query(String.class)
                .optional();
        return sha256.filter(kept -> same(kept, Fingerprint.of(secret))).isPresent()
                ? database.sql(SELECT + " WHERE id = ?")
                        .params(id)
                        .query(KeyRing::key)
                        .optional()
                        .map(key -> key.boundTo(origins(database, id)))
                : Optional.empty();
    }

    private static Set<String> origins(JdbcClient database, String id) {
        return database.sql("SELECT origin FROM key_origin WHERE key_id = ?")
                .params(id)
                .query(String.class)
                .set();
    }

    @Override
    public boolean knows(String origin) {
        return closed()
                && store.transaction(database -> database.sql("SELECT COUNT(*) FROM key_origin o JOIN api_key k ON"
                                        + " k.id = o.key_id WHERE o.origin = ? AND k.expires_at > ?")
                                .params(origin, Times.now())
                                .query(Long.class)
                                .single())
                        > 0;
    }

    private static StoredKey key(ResultSet row, int number) throws SQLException {
        return new StoredKey(
                row.getString(1),
                row.getString(2),
                row.getString(3),
                Stream.of(row.getString(4).split(" "))
                        .flatMap(word -> Scope.find(word).stream())
                        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Scope.class))),
                row.getObject(5, OffsetDateTime.class).toInstant(),
                row.getObject(6, OffsetDateTime.class).toInstant(),
                Set.of());
    }

    /**
     * A key that was just made.
     *
     * @param key what is kept of it
     * @param text the whole key, which is shown this once
     */
    record Made(StoredKey key, String text) {}

    /**
     * What a key is to be good for.
     *
     * @param name who has it
     * @param scopes what it is good for
     * @param origins where it may stand in the open; empty for a secret
     * @param life for how long
     */
    record Wanted(String name, Set<Scope> scopes, Set<String> origins, Duration life) {}

    Made make(Caller caller, String tenant, Wanted wanted) {
        return store.transaction(database -> make(database, caller, tenant, wanted));
    }

    private Made make(JdbcClient database, Caller caller, String tenant, Wanted wanted) {
        byte[] id = new byte[ID_BYTES];
        byte[] secret = new byte[SECRET_BYTES];
        random.nextBytes(id);
        random.nextBytes(secret);
        String secretText = Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
        Instant now = Times.now().toInstant();
        StoredKey made = new StoredKey(
                HexFormat.of().formatHex(id),
                tenant,
                wanted.name(),
                wanted.scopes(),
                now,
                now.plus(wanted.life()),
                wanted.origins());
        database.sql("INSERT INTO api_key (id, tenant, name, scopes, secret_sha256, made_at, expires_at)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)")
                .params(
                        made.id(),
                        tenant,
                        made.name(),
                        made.scopes().stream().sorted().map(Scope::word).collect(Collectors.joining(" ")),
                        Fingerprint.of(secretText),
                        made.madeAt().atOffset(ZoneOffset.UTC),
                        made.expiresAt().atOffset(ZoneOffset.UTC))
                .update();
        made.origins()
                .forEach(origin -> database.sql("INSERT INTO key_origin (key_id, origin) VALUES (?, ?)")
                        .params(made.id(), origin)
                        .update());
        note(database, caller, tenant, "key.made", made.id());
        return new Made(made, (made.origins().isEmpty() ? "cw_" : "cwp_") + made.id() + "_" + secretText);
    }

    /** Keys that are good for something still, the oldest first. */
    List<StoredKey> list(String tenant) {
        return store.transaction(database -> database
                .sql(SELECT + " WHERE tenant = ? AND expires_at > ? ORDER BY made_at, id")
                .params(tenant, Times.now())
                .query(KeyRing::key)
                .list()
                .stream()
                .map(key -> key.boundTo(origins(database, key.id())))
                .toList());
    }

    private static StoredKey get(JdbcClient database, String tenant, String id) {
        return database.sql(SELECT + " WHERE tenant = ? AND id = ? AND expires_at > ?")
                .params(tenant, id, Times.now())
                .query(KeyRing::key)
                .optional()
                .orElseThrow(() -> new ProblemException(
                        Problem.of(ProblemKind.NOT_FOUND, "There is no key of this id; GET /v1/keys lists the keys.")));
    }

    /** Makes a key like another, which stays good for some time, so that callers can change over. */
    Made rotate(Caller caller, String tenant, String id, Duration overlap) {
        return store.transaction(database -> {
            StoredKey old = get(database, tenant, id);
            Made made = make(
                    database,
                    caller,
                    tenant,
                    new Wanted(
                            old.name(),
                            old.scopes(),
                            origins(database, id),
                            Duration.between(old.madeAt(), old.expiresAt())));
            Instant end = Times.now().toInstant().plus(overlap);
            if (end.isBefore(old.expiresAt())) {
                expire(database, id, end);
            }
            note(database, caller, tenant, "key.rotated", id);
            return made;
        });
    }

    boolean end(Caller caller, String tenant, String id) {
        return store.transaction(database -> {
            expire(database, get(database, tenant, id).id(), Times.now().toInstant());
            note(database, caller, tenant, "key.ended", id);
            return true;
        });
    }

    private static void expire(JdbcClient database, String id, Instant at) {
        database.sql("UPDATE api_key SET expires_at = ? WHERE id = ?")
                .params(at.atOffset(ZoneOffset.UTC), id)
                .update();
    }

    /** In the trail of the tenant whose key it is, also where the operator did it. */
    private static void note(JdbcClient database, Caller caller, String tenant, String what, String id) {
        AuditTrail.write(database, new Caller(tenant, caller.name(), caller.scopes()), what, id);
    }
}
