package org.capwright.service.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.capwright.json.StrictJson;
import org.capwright.service.http.load.Presence;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.capwright.words.Text;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.core.exc.UnexpectedEndOfInputException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.json.JsonMapper;

/** Reads JSON bodies within bounds. */
@Component
public final class RequestBodies {

    /** The most bytes a body may have. */
    public static final int MOST_BYTES = 256 * 1024;

    private static final char MARK = '\uFEFF';

    private static final Map<String, String> ACCEPT_POST = Map.of("Accept-Post", MediaType.APPLICATION_JSON_VALUE);

    private final JsonMapper mapper;

    /**
     * A reader of bodies.
     *
     * @param mapper the mapper
     */
    public RequestBodies(JsonMapper mapper) {
        this.mapper = mapper;
    }

    /**
     * Reads the body of a request.
     *
     * @param request the request
     * @return the body as a tree
     * @throws IOException if the caller goes away
     * @throws ProblemException if the body is of another media type, too large, not UTF-8 or no JSON
     */
    public JsonNode read(HttpServletRequest request) throws IOException {
        return parse(bytes(request, MOST_BYTES));
    }

    /**
     * The body of a request as it came.
     *
     * @param request the request
     * @param most the most bytes it may have
     * @return the bytes
     * @throws IOException if the caller goes away
     * @throws ProblemException if the body is of another media type or too large
     */
    public byte[] bytes(HttpServletRequest request, int most) throws IOException {
        checkType(request.getContentType() == null ? "" : request.getContentType());
        if (request.getContentLengthLong() > most) {
            throw tooLarge(most);
        }
        InputStream in = request.getInputStream();
        byte[] bytes = in.readNBytes(most + 1);
        if (bytes.length > most) {
            throw tooLarge(most);
        }
        Presence.check(request);
        return bytes;
    }

    private static void checkType(String type) {
        try {
            MediaType given = MediaType.parseMediaType(type);
            if (given.equalsTypeAndSubtype(MediaType.APPLICATION_JSON)
                    && (given.getCharset() == null || StandardCharsets.UTF_8.equals(given.getCharset()))) {
                return;
            }
        } catch (IllegalArgumentException e) {
            // said below
        }
        throw new ProblemException(
                Problem.of(
                        ProblemKind.UNSUPPORTED_MEDIA_TYPE,
                        "The body must be sent as Content-Type: application/json, in UTF-8."),
                ACCEPT_POST);
    }

    private static ProblemException tooLarge(int most) {
        return new ProblemException(Problem.of(
                ProblemKind.BODY_TOO_LARGE,
                Text.of("The body is larger than {most} kB, the most that is read.")
                        .with("most", most / 1024)));
    }

    /**
     * Reads a JSON document.
     *
     * @param bytes the document
     * @return the document as a tree
     * @throws ProblemException if it is not UTF-8 or no JSON
     */
    public JsonNode parse(byte[] bytes) {
        String text;
        try {
            text = withoutMark(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)));
        } catch (CharacterCodingException e) {
            throw new ProblemException(Problem.of(ProblemKind.MALFORMED_BODY, "The body is not valid UTF-8."));
        }
        if (text.isBlank()) {
            throw new ProblemException(
                    Problem.of(ProblemKind.MALFORMED_BODY, "The body is empty; it must be a JSON object."));
        }
        try {
            return mapper.readTree(text);
        } catch (JacksonException e) {
            throw malformed(e);
        }
    }

    /** Some editors begin a file with a mark of the byte order, which a reader may pass over (RFC 8259, section 8.1). */
    private static String withoutMark(CharBuffer text) {
        boolean marked = text.hasRemaining() && text.charAt(0) == MARK;
        return (marked ? text.position(1) : text).toString();
    }

    private static ProblemException malformed(JacksonException e) {
        Problem problem = Problem.of(
                ProblemKind.MALFORMED_BODY,
                Text.of("The body is not a JSON document: {reason}.").with("reason", reason(e)));
        TokenStreamLocation at = e.getLocation();
        return new ProblemException(
                at == null || at.getLineNr() < 1 ? problem : problem.at(at.getLineNr(), Math.max(1, at.getColumnNr())));
    }

    /** In words of our own: the parser's speak of its classes and of where it reads from. */
    private static Text reason(JacksonException e) {
        if (e instanceof StreamConstraintsException) {
            return Text.of("it is nested deeper than {most} levels, or has a number or a text that is too long")
                    .with("most", StrictJson.DEEPEST);
        } else if (e instanceof UnexpectedEndOfInputException) {
            return Text.of("it ends before everything that was opened is closed");
        } else if (e instanceof MismatchedInputException) {
            return Text.of("something follows its end");
        }
        String said = e.getOriginalMessage();
        return Text.of(
                said != null && said.startsWith("Duplicate")
                        ? "an object names a field twice"
                        : "a character stands where it cannot");
    }
}
