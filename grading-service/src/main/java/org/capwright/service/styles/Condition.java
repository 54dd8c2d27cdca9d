package org.capwright.service.styles;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;

/**
 * What a caller believes to be there (RFC 9110, section 13.1; 428 of RFC 6585).
 *
 * @param match entity tags of If-Match, one of which must be there; empty without the header
 * @param noneMatch entity tags of If-None-Match, none of which may be there; empty without the header
 */
record Condition(List<String> match, List<String> noneMatch) {

    private static final String ANY = "*";

    static Condition of(Optional<String> match, Optional<String> noneMatch) {
        return new Condition(tags(match), tags(noneMatch));
    }

    private static List<String> tags(Optional<String> header) {
        return header.stream()
                .flatMap(value -> Stream.of(value.split(",")))
                .map(String::strip)
                .filter(tag -> !tag.isEmpty())
                .toList();
    }

    /** Refuses a change that its caller did not mean. */
    void check(Optional<StyleRevision> there) {
        Optional<String> tag = there.map(StyleRevision::entityTag);
        if (!match.isEmpty() && tag.filter(this::matched).isEmpty()) {
            throw failed(tag);
        }
        if (tag.isPresent() && !noneMatch.isEmpty() && unchanged(tag.get())) {
            throw failed(tag);
        }
    }

    /** As {@link #check}, and what is there may only be changed by who says what it is. */
    void checkChange(Optional<StyleRevision> there) {
        check(there);
        if (there.isPresent() && match.isEmpty()) {
            throw new ProblemException(Problem.of(
                    ProblemKind.PRECONDITION_REQUIRED,
                    Text.of("The style exists already, at {tag}. Send If-Match with the entity tag that your"
                                    + " change is made from.")
                            .with("tag", there.get().entityTag())));
        }
    }

    /** Weak tags never match, as bodies are compared byte by byte. */
    private boolean matched(String tag) {
        return match.contains(ANY) || match.contains(tag);
    }

    /** Whether the caller has what is there. */
    boolean unchanged(String tag) {
        return noneMatch.contains(ANY) || noneMatch.contains(tag) || noneMatch.contains("W/" + tag);
    }

    private static ProblemException failed(Optional<String> tag) {
        return new ProblemException(Problem.of(
                ProblemKind.PRECONDITION_FAILED,
                tag.map(there -> "The style is at " + there + " now; read it, and change that.")
                        .orElse("There is no such style; without If-Match it is made.")));
    }
}
