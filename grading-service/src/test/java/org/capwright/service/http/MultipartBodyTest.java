package org.capwright.service.http;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.capwright.service.http.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Forms as RFC 7578 and RFC 2046, section 5.1.1, have them. */
class MultipartBodyTest {

    private static final byte[] BOUNDARY = bytes("--XyZ");

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static List<MultipartBody.Part> parts(String body) {
        return MultipartBody.parts(bytes(body.replace("\n", "\r\n")), BOUNDARY);
    }

    private static String text(MultipartBody.Part part) throws IOException {
        return new String(part.content().stream().readAllBytes(), StandardCharsets.UTF_8);
    }

    @Test
    void readsPartsInOrder() throws IOException {
        List<MultipartBody.Part> parts = parts("""
                a preamble
                --XyZ
                Content-Disposition: form-data; name="file"; filename="sleeve-40.dxf"
                Content-Type: image/vnd.dxf

                0
                SECTION

                --XyZ\t
                content-disposition: form-data; name=request

                {}
                --XyZ
                Content-Disposition: form-data; name="file"; filename=""


                --XyZ--
                an epilogue""");
        assertEquals(
                List.of("file", "request", "file"),
                parts.stream().map(MultipartBody.Part::name).toList());
        assertEquals("sleeve-40.dxf", parts.get(0).label());
        assertEquals("image/vnd.dxf", parts.get(0).type().orElseThrow().toString());
        assertEquals("0\r\nSECTION\r\n", text(parts.get(0)));
        assertEquals("{}", text(parts.get(1)));
        assertEquals("", text(parts.get(2)));
        assertEquals("", parts.get(2).label());
        assertTrue(parts.get(1).type().isEmpty());
    }

    /** A file may hold anything but its boundary: every byte comes back. */
    @Test
    void keepsEveryByte() throws IOException {
        for (long seed = 1; seed <= 50; seed++) {
            Random random = new Random(seed);
            byte[] content = new byte[random.nextInt(3000)];
            random.nextBytes(content);
            byte[] head = bytes("--XyZ\r\nContent-Disposition: form-data; name=\"file\"\r\n\r\n");
            byte[] tail = bytes("\r\n--XyZ--\r\n");
            byte[] body = new byte[head.length + content.length + tail.length];
            System.arraycopy(head, 0, body, 0, head.length);
            System.arraycopy(content, 0, body, head.length, content.length);
            System.arraycopy(tail, 0, body, head.length + content.length, tail.length);
            assertArrayEquals(
                    content,
                    MultipartBody.parts(body, BOUNDARY).get(0).content().stream()
                            .readAllBytes(),
                    "seed " + seed);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "../../etc/passwd, passwd",
        "C:\\\\gowns\\\\40.dxf, 40.dxf",
        "a\u202Eb.csv, ab.csv",
        "größe 40.dxf, größe 40.dxf"
    })
    void namesOfFilesAreLabels(String sent, String label) {
        List<MultipartBody.Part> parts =
                parts("--XyZ\nContent-Disposition: form-data; name=\"file\"; filename=\"" + sent + "\"\n\nx\n--XyZ--");
        assertEquals(label, parts.get(0).label());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "no boundary",
                "--XyZ",
                "--XyZ\n",
                "--XyZ\nContent-Disposition: form-data; name=\"file\"\n\nunended",
                "--XyZ\nContent-Disposition: form-data; name=\"file\"\n--XyZ--",
                "--XyZ\nContent-Type: text/csv\n\nnameless\n--XyZ--",
                "--XyZ\nContent-Disposition: attachment; name=\"file\"\n\nx\n--XyZ--",
                "--XyZ\nContent-Disposition: form-data; name=\"file\"\nContent-Type: ///\n\nx\n--XyZ--",
                "--XyZand more\n\nx\n--XyZ--"
            })
    void refusesWhatIsNoForm(String body) {
        ProblemException refused = assertThrows(ProblemException.class, () -> parts(body));
        assertEquals(400, refused.problem().status(), body);
    }

    @Test
    void countsPartsAndHeaderBytes() {
        String part = "--XyZ\nContent-Disposition: form-data; name=\"file\"\n\nx\n";
        assertEquals(
                MultipartBody.MOST_PARTS,
                parts(part.repeat(MultipartBody.MOST_PARTS) + "--XyZ--").size());
        assertThrows(ProblemException.class, () -> parts(part.repeat(MultipartBody.MOST_PARTS + 1) + "--XyZ--"));
        assertThrows(
                ProblemException.class,
                () -> parts("--XyZ\n" + "X: y\n".repeat(5_000)
                        + "Content-Disposition: form-data; name=\"file\"\n\nx\n--XyZ--"));
        assertThrows(
                ProblemException.class,
                () -> parts("--XyZ\nX: " + "y".repeat(10_000)
                        + "\nContent-Disposition: form-data; name=\"file\"\n\nx\n--XyZ--"));
    }
}
