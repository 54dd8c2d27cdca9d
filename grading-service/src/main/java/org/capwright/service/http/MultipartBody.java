package org.capwright.service.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.capwright.service.http.problem.Problem;
import org.capwright.service.http.problem.ProblemException;
import org.capwright.service.http.problem.ProblemKind;
import org.springframework.http.ContentDisposition;
import org.springframework.http.MediaType;

/**
 * A form of several parts (RFC 7578), read within bounds and in memory: nothing of it is ever written to the disk, and the container's own reading of forms is switched off.
 */
public final class MultipartBody {

    /** The most parts that are read. */
    public static final int MOST_PARTS = 64;

    private static final int MOST_HEADER_BYTES = 4096;
    private static final int LONGEST_LABEL = 60;
    private static final byte[] CRLF = {'\r', '\n'};

    private final byte[] body;
    private final List<Part> parts = new ArrayList<>();

    /**
     * One part of a form.
     *
     * @param name name of the field
     * @param label what the sender calls the file, without folders and control characters; to be shown, never to be opened. Empty if there is none
     * @param type media type, if one is stated
     * @param content the bytes, not to be written to
     */
    public record Part(String name, String label, Optional<MediaType> type, Content content) {}

    /** A stretch of the body. */
    public static final class Content {

        private final byte[] body;
        private final int from;
        private final int length;

        private Content(byte[] body, int from, int to) {
            this.body = body;
            this.from = from;
            this.length = to - from;
        }

        /**
         * How much it is.
         *
         * @return bytes
         */
        public int length() {
            return length;
        }

        /**
         * The bytes one by one.
         *
         * @return a stream that holds nothing that would have to be closed
         */
        public InputStream stream() {
            return new ByteArrayInputStream(body, from, length);
        }

        /**
         * The first bytes, or all of them.
         *
         * @param most greatest number of bytes
         * @return a copy
         */
        public byte[] start(int most) {
            return Arrays.copyOfRange(body, from, from + Math.min(most, length));
        }
    }

    private MultipartBody(byte[] body) {
        this.body = body;
    }

    /**
     * Whether a request says that it is such a form.
     *
     * @param request the request
     * @return true if its media type is multipart/form-data
     */
    public static boolean isOne(HttpServletRequest request) {
        String type = request.getContentType();
        return type != null
                && type.strip().toLowerCase(Locale.ROOT).split("[;\\s]", 2)[0].equals("multipart/form-data");
    }

    /**
     * Reads a form.
     *
     * @param request a request that {@link #isOne}
     * @param mostBytes the most bytes of the whole body
     * @return its parts in order
     * @throws IOException if the caller goes away
     * @throws ProblemException if it is too large, or no form
     */
    public static List<Part> read(HttpServletRequest request, int mostBytes) throws IOException {
        byte[] boundary = boundary(request.getContentType() == null ? "" : request.getContentType());
        if (request.getContentLengthLong() > mostBytes) {
            throw tooLarge(mostBytes);
        }
        byte[] bytes = request.getInputStream().readNBytes(mostBytes + 1);
        if (bytes.length > mostBytes) {
            throw tooLarge(mostBytes);
        }
        return parts(bytes, boundary);
    }

    static List<Part> parts(byte[] bytes, byte[] boundary) {
        MultipartBody form = new MultipartBody(bytes);
        form.split(boundary);
        return List.copyOf(form.parts);
    }

    private static ProblemException tooLarge(int most) {
        return new ProblemException(Problem.of(
                ProblemKind.BODY_TOO_LARGE,
                "The form is larger than " + most / 1_000_000 + " million bytes, the most that is read of all its parts"
                        + " together."));
    }

    private static ProblemException malformed(String what) {
        return new ProblemException(
                Problem.of(ProblemKind.MALFORMED_BODY, "The body is no multipart/form-data: " + what + "."));
    }

    /** RFC 2046, section 5.1.1: 1 to 70 characters. */
    private static byte[] boundary(String contentType) {
        String boundary;
        try {
            boundary = MediaType.parseMediaType(contentType).getParameter("boundary");
        } catch (IllegalArgumentException e) {
            boundary = null;
        }
        String bare = boundary == null ? "" : boundary.replaceAll("^\"|\"$", "");
        if (bare.isEmpty() || bare.length() > 70) {
            throw malformed("Content-Type has no boundary of 1 to 70 characters");
        }
        return ("--" + bare).getBytes(StandardCharsets.ISO_8859_1);
    }

    private void split(byte[] boundary) {
        int at = matches(boundary, 0) ? 0 : delimiter(boundary, 0) + CRLF.length;
        if (at < CRLF.length && at != 0) {
            throw malformed("its boundary does not occur");
        }
        while (true) {
            int after = at + boundary.length;
            if (matches("--".getBytes(StandardCharsets.ISO_8859_1), after)) {
                return;
            }
            while (after < body.length && (body[after] == ' ' || body[after] == '\t')) {
                after++;
            }
            if (!matches(CRLF, after)) {
                throw malformed("a boundary is not followed by a line break");
            }
            int end = delimiter(boundary, after);
            if (end < 0) {
                throw malformed("it ends before its last part does");
            }
            if (parts.size() == MOST_PARTS) {
                throw malformed("it has more than " + MOST_PARTS + " parts, the most that are read");
            }
            parts.add(part(after + CRLF.length, end));
            at = end + CRLF.length;
        }
    }

    /** Where the next line break with the boundary behind it is, from a place on; -1 if there is none. No byte of the boundary is a line break, so one pass is enough. */
    private int delimiter(byte[] boundary, int from) {
        for (int i = from; i + CRLF.length + boundary.length <= body.length; i++) {
            if (body[i] == '\r' && body[i + 1] == '\n' && matches(boundary, i + CRLF.length)) {
                return i;
            }
        }
        return -1;
    }

    private boolean matches(byte[] wanted, int at) {
        return at >= 0
                && at + wanted.length <= body.length
                && Arrays.equals(body, at, at + wanted.length, wanted, 0, wanted.length);
    }

    private Part part(int from, int end) {
        Optional<ContentDisposition> disposition = Optional.empty();
        Optional<MediaType> type = Optional.empty();
        int at = from;
        int limit = Math.min(end, from + MOST_HEADER_BYTES);
        while (at > limit || !matches(CRLF, at)) {
            if (at > limit) {
                throw malformed("the headers of part " + (parts.size() + 1) + " do not end within " + MOST_HEADER_BYTES
                        + " bytes");
            }
            int lineEnd = lineEnd(at, limit);
            String line = new String(body, at, lineEnd - at, StandardCharsets.UTF_8);
            int colon = line.indexOf(':');
            String header = colon < 0 ? "" : line.substring(0, colon).strip().toLowerCase(Locale.ROOT);
            String value = line.substring(colon + 1).strip();
            try {
                if (header.equals("content-disposition")) {
                    disposition = Optional.of(ContentDisposition.parse(value));
                } else if (header.equals("content-type")) {
                    type = Optional.of(MediaType.parseMediaType(value));
                }
            } catch (IllegalArgumentException e) {
                throw malformed("a header of part " + (parts.size() + 1) + " cannot be read");
            }
            at = lineEnd + CRLF.length;
        }
        String name = disposition
                .filter(ContentDisposition::isFormData)
                .map(ContentDisposition::getName)
                .orElse("");
        if (name == null || name.isEmpty()) {
            throw malformed("part " + (parts.size() + 1) + " has no Content-Disposition: form-data with a name");
        }
        String file = disposition.map(ContentDisposition::getFilename).orElse("");
        // An empty part ends with the line break of its headers.
        int start = Math.min(at + CRLF.length, end);
        return new Part(name, label(file == null ? "" : file), type, new Content(body, start, end));
    }

    private int lineEnd(int from, int end) {
        for (int i = from; i < end; i++) {
            if (body[i] == '\r' && i + 1 < body.length && body[i + 1] == '\n') {
                return i;
            }
        }
        if (matches(CRLF, end)) {
            return end;
        }
        throw malformed(
                "the headers of part " + (parts.size() + 1) + " do not end within " + MOST_HEADER_BYTES + " bytes");
    }

    private static String label(String file) {
        String base = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
        StringBuilder label = new StringBuilder();
        base.codePoints()
                .limit(LONGEST_LABEL)
                .filter(c -> !Character.isISOControl(c)
                        && Character.getType(c) != Character.FORMAT
                        && Character.getType(c) != Character.SURROGATE)
                .forEach(label::appendCodePoint);
        return label.toString().strip();
    }
}
