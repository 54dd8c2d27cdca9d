package org.capwright.service.styles;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.capwright.service.http.access.Caller;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.service.store.AuditTrail;
import org.capwright.service.store.Fingerprint;
import org.capwright.service.store.Times;
import org.capwright.words.Text;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The styles of a tenant in the database of one transaction. */
public final class StyleShelf {

    private static final String REVISION =
            "SELECT r.id, r.revision, r.name, r.body, r.sha256, r.made_at, r.made_by, s.archived"
                    + " FROM style s JOIN style_revision r ON r.tenant = s.tenant AND r.id = s.id";

    private final JdbcClient database;
    private final Caller caller;

    /**
     * The shelf of a caller.
     *
     * @param database the database of the transaction
     * @param caller whose tenant's styles these are
     */
    public StyleShelf(JdbcClient database, Caller caller) {
        this.database = database;
        this.caller = caller;
    }

    private static StyleRevision revision(ResultSet row, int number) throws SQLException {
        return new StyleRevision(
                row.getString(1),
                row.getInt(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getObject(6, OffsetDateTime.class).toInstant(),
                row.getString(7),
                row.getBoolean(8));
    }

    private static ProblemException unknown(Text what) {
        return new ProblemException(Problem.of(
                ProblemKind.NOT_FOUND,
                Text.of("{what}; GET /v1/styles lists the styles.").with("what", what)));
    }

    /**
     * The latest revision of a style.
     *
     * @param id id of the style
     * @return the revision, if there is such a style
     */
    public Optional<StyleRevision> find(String id) {
        return database.sql(REVISION + " AND r.revision = s.revision WHERE s.tenant = ? AND s.id = ?")
                .params(caller.tenant(), id)
                .query(StyleShelf::revision)
                .optional();
    }

    /**
     * A revision of a style.
     *
     * @param id id of the style
     * @param number number of the revision; the latest if none
     * @return the revision
     * @throws ProblemException if there is no such style or revision
     */
    public StyleRevision get(String id, Optional<Integer> number) {
        StyleRevision latest = find(id).orElseThrow(() -> unknown(Text.of("There is no style of this id")));
        if (number.isEmpty() || number.get() == latest.revision()) {
            return latest;
        }
        return database.sql(REVISION + " WHERE s.tenant = ? AND s.id = ? AND r.revision = ?")
                .params(caller.tenant(), id, number.get())
                .query(StyleShelf::revision)
                .optional()
                .orElseThrow(() -> unknown(Text.of("The style has no such revision, only 1 to {last}")
                        .with("last", latest.revision())));
    }

    List<StyleRevision> revisions(String id, int before, int most) {
        get(id, Optional.empty());
        return database.sql(REVISION
                        + " WHERE s.tenant = ? AND s.id = ? AND r.revision < ? ORDER BY r.revision DESC LIMIT ?")
                .params(caller.tenant(), id, before, most)
                .query(StyleShelf::revision)
                .list();
    }

    List<StyleRevision> list(String after, boolean archived, int most) {
        return database.sql(REVISION + " AND r.revision = s.revision WHERE s.tenant = ? AND s.id > ?"
                        + " AND (s.archived = FALSE OR s.archived = ?) ORDER BY s.id LIMIT ?")
                .params(caller.tenant(), after, archived, most)
                .query(StyleShelf::revision)
                .list();
    }

    /** No two change a style at once. */
    private Optional<StyleRevision> findLocked(String id) {
        database.sql("SELECT revision FROM style WHERE tenant = ? AND id = ? FOR UPDATE")
                .params(caller.tenant(), id)
                .query(Integer.class)
                .optional();
        return find(id);
    }

    /**
     * What came of keeping a body.
     *
     * @param revision the latest revision now
     * @param fresh whether there was no such style before
     */
    record Kept(StyleRevision revision, boolean fresh) {}

    /** Keeps a body as the next revision. One that is the latest already makes none, but takes the style out of the archive. */
    Kept put(String id, String name, String body, Condition condition) {
        Optional<StyleRevision> before = findLocked(id);
        condition.checkChange(before);
        String sha256 = Fingerprint.of(body);
        if (before.isEmpty()) {
            database.sql("INSERT INTO style (tenant, id, revision, archived) VALUES (?, ?, 1, FALSE)")
                    .params(caller.tenant(), id)
                    .update();
        } else if (before.get().sha256().equals(sha256)) {
            if (before.get().archived()) {
                archive(id, false);
                AuditTrail.write(database, caller, "style.restored", id);
            }
            return new Kept(get(id, Optional.empty()), false);
        }
        int number = before.map(StyleRevision::revision).orElse(0) + 1;
        keep(id, new StyleRevision(id, number, name, body, sha256, Times.now().toInstant(), caller.name(), false));
        database.sql("UPDATE style SET revision = ?, archived = FALSE WHERE tenant = ? AND id = ?")
                .params(number, caller.tenant(), id)
                .update();
        AuditTrail.write(database, caller, "style.revised", id + "/revisions/" + number);
        return new Kept(get(id, Optional.empty()), before.isEmpty());
    }

    private void keep(String id, StyleRevision revision) {
        database.sql("INSERT INTO style_revision (tenant, id, revision, name, body, sha256, made_at, made_by)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)")
                .params(
                        caller.tenant(),
                        id,
                        revision.revision(),
                        revision.name(),
                        revision.body(),
                        revision.sha256(),
                        revision.madeAt().atOffset(ZoneOffset.UTC),
                        revision.madeBy())
                .update();
    }

    private void archive(String id, boolean archived) {
        database.sql("UPDATE style SET archived = ? WHERE tenant = ? AND id = ?")
                .params(archived, caller.tenant(), id)
                .update();
    }

    /** Takes a style off the shelf: for good, or into the archive where orders pin a revision of it. */
    Optional<StyleRevision> remove(String id, Condition condition) {
        Optional<StyleRevision> before = findLocked(id);
        if (before.isEmpty()) {
            throw unknown(Text.of("There is no style of this id"));
        }
        condition.check(before);
        boolean pinned = database.sql("SELECT id FROM sleeve_order WHERE tenant = ? AND style = ? LIMIT 1")
                .params(caller.tenant(), id)
                .query(String.class)
                .optional()
                .isPresent();
        if (pinned) {
            archive(id, true);
            AuditTrail.write(database, caller, "style.archived", id);
            return Optional.of(get(id, Optional.empty()));
        }
        database.sql("DELETE FROM style WHERE tenant = ? AND id = ?")
                .params(caller.tenant(), id)
                .update();
        AuditTrail.write(database, caller, "style.deleted", id);
        return Optional.empty();
    }

    /** Puts a whole style back, with its revisions as they were. One that is there already with the same first revisions is carried on. */
    int restore(List<StyleRevision> revisions) {
        String id = revisions.get(0).id();
        Optional<StyleRevision> before = findLocked(id);
        int there = before.map(StyleRevision::revision).orElse(0);
        for (StyleRevision revision : revisions) {
            if (revision.revision() <= there
                    && !get(id, Optional.of(revision.revision())).sha256().equals(revision.sha256())) {
                throw new ProblemException(Problem.of(
                        ProblemKind.CONFLICT,
                        Text.of("The style {id} is there with another revision {revision}; nothing was imported.")
                                .with("id", id)
                                .with("revision", revision.revision())));
            }
        }
        StyleRevision last = revisions.get(revisions.size() - 1);
        if (last.revision() <= there) {
            return 0;
        }
        if (before.isEmpty()) {
            database.sql("INSERT INTO style (tenant, id, revision, archived) VALUES (?, ?, ?, ?)")
                    .params(caller.tenant(), id, last.revision(), last.archived())
                    .update();
        } else {
            database.sql("UPDATE style SET revision = ? WHERE tenant = ? AND id = ?")
                    .params(last.revision(), caller.tenant(), id)
                    .update();
        }
        revisions.stream().filter(revision -> revision.revision() > there).forEach(revision -> keep(id, revision));
        AuditTrail.write(database, caller, "style.imported", id + "/revisions/" + last.revision());
        return last.revision() - there;
    }
}
