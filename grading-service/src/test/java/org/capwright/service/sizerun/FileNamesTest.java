package org.capwright.service.sizerun;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.capwright.exchange.FileName;
import org.capwright.json.style.SizeRunReader;
import org.capwright.json.style.SizeRunRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.node.ObjectNode;

class FileNamesTest {

    private static SizeRunRequest named(String name) {
        ObjectNode body = (ObjectNode) Requests.demo();
        body.put("name", name);
        return SizeRunReader.read(body);
    }

    @Test
    void plainNamesArePlain() {
        assertEquals(
                "attachment; filename=\"choir-gown-bell-shoulder-rev-1-size-run.dxf\"",
                FileNames.disposition(named("Choir gown, bell shoulder"), "dxf"));
    }

    /** RFC 6266: the header is of US-ASCII characters; other scripts go by RFC 8187 as percent-encoded UTF-8. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "../../etc/passwd",
                "a\"; filename=\"b.exe",
                "C:\\gowns\\*?|<>",
                "...",
                "Chorgewand für Übung",
                "合唱ガウン",
                "ثوب الجوقة",
                "🧵",
                "con",
                "%2e%2e%2f"
            })
    void whateverTheNameTheHeaderIsSafe(String name) {
        String header = FileNames.disposition(named(name), "svg");
        assertTrue(header.chars().allMatch(c -> c >= 0x20 && c < 0x7F), header);
        String value = header.substring(header.indexOf("filename"));
        assertTrue(
                value.matches("filename\\*?=(\"(=\\?UTF-8\\?Q\\?)?[^\"\\\\/:*|<>]*\"|UTF-8''[A-Za-z0-9%.-]*)(;"
                        + " filename\\*=UTF-8''[A-Za-z0-9%.-]*)?"),
                header);
        assertTrue(!header.contains("..") && !header.contains("%2F") && !header.contains("%5C"), header);
        String file = FileName.of(named(name).title());
        assertTrue(file.matches("[\\p{L}\\p{N}\\p{M}-]+"), file);
    }
}
