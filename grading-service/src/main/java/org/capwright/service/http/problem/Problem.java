package org.capwright.service.http.problem;

import io.swagger.v3.oas.annotations.media.Schema;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import org.capwright.json.problem.FieldViolation;
import org.capwright.json.problem.RefusedRequestException;
import org.capwright.words.Language;
import org.capwright.words.Text;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;

/**
 * A problem document (RFC 9457).
 *
 * @param type kind of the problem, a URI reference; {@code about:blank} says no more than the status
 * @param title the kind in words, always the same for a type
 * @param status HTTP status code
 * @param detail what went wrong this time and what to do about it
 * @param instance path of the request
 * @param line line of the body, from 1, where it could not be read
 * @param column column of the body, from 1, where it could not be read
 * @param violations everything that is wrong with the request
 */
@Schema(description = "A problem document, RFC 9457.")
public record Problem(
        @Schema(
                description = "Kind of the problem, a URI reference.",
                example = "urn:capwright:problem:invalid-request")
        String type,

        @Schema(description = "The kind in words.", example = "Invalid request")
        String title,

        @Schema(description = "HTTP status code.", example = "422")
        int status,

        @Schema(
                description = "What went wrong this time and what to do about it.",
                implementation = String.class,
                example = "1 field is wrong; each is named with what would work.")
        Text detail,

        @Schema(description = "Path of the request.", example = "/v1/size-runs")
        Optional<String> instance,

        @Schema(description = "Line of the body, from 1, where it could not be read.", example = "3")
        Optional<Integer> line,

        @Schema(description = "Column of the body, from 1, where it could not be read.", example = "17")
        Optional<Integer> column,

        @Schema(description = "Everything that is wrong with the request; empty where no field is to blame.")
        List<FieldViolation> violations) {

    static final String TYPE = "urn:capwright:problem:";

    /**
     * A problem of a kind.
     *
     * @param kind which
     * @param detail what went wrong this time
     * @return the document, without an instance
     */
    public static Problem of(ProblemKind kind, Text detail) {
        return of(kind, detail, List.of());
    }

    /**
     * A problem of a kind.
     *
     * @param kind which
     * @param detail what went wrong this time
     * @return the document, without an instance
     */
    public static Problem of(ProblemKind kind, String detail) {
        return of(kind, Text.of(detail));
    }

    /**
     * A problem with the fields of a request.
     *
     * @param kind which
     * @param detail what went wrong this time
     * @param violations what is wrong
     * @return the document, without an instance
     */
    public static Problem of(ProblemKind kind, Text detail, List<FieldViolation> violations) {
        return new Problem(
                TYPE + kind.word(),
                kind.title(),
                kind.status(),
                detail,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.copyOf(violations));
    }

    /**
     * What is wrong with a request.
     *
     * @param refused what was found
     * @return the document, without an instance
     */
    public static Problem of(RefusedRequestException refused) {
        return of(ProblemKind.INVALID_REQUEST, refused.detail(), refused.violations());
    }

    /**
     * The same problem, found at a place of the body.
     *
     * @param atLine line from 1
     * @param atColumn column from 1
     * @return the document with the place
     */
    public Problem at(int atLine, int atColumn) {
        return new Problem(
                type, title, status, detail, instance, Optional.of(atLine), Optional.of(atColumn), violations);
    }

    /**
     * The same problem, said in a language for good.
     *
     * @param language that of the reader
     * @return a problem
     */
    public Problem in(Language language) {
        return new Problem(
                type,
                language.say(title),
                status,
                Text.name(detail.in(language)),
                instance,
                line,
                column,
                violations.stream().map(violation -> violation.in(language)).toList());
    }

    /** The document as Spring writes it; Spring adds the path of the request. */
    ProblemDetail document() {
        ProblemDetail document = ProblemDetail.forStatusAndDetail(HttpStatusCode.valueOf(status), detail.toString());
        document.setType(URI.create(type));
        document.setTitle(title);
        line.ifPresent(found -> document.setProperty("line", found));
        column.ifPresent(found -> document.setProperty("column", found));
        document.setProperty("violations", violations);
        return document;
    }
}
