package org.capwright;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Set;
import java.util.zip.CRC32;
import org.capwright.quantity.Deflate;
import org.capwright.words.Text;

/**
 * A file as it lies in an archive.
 *
 * @param name its name
 * @param meaning what it holds
 * @param size its length, bytes
 * @param crc its CRC-32
 * @param sum its SHA-256 in hexadecimal digits
 * @param deflated whether the content is deflated, or stored as it is
 * @param content the bytes that lie in the archive
 */
record PackedFile(String name, Text meaning, int size, int crc, String sum, boolean deflated, byte[] content) {

    /** Files that are compressed already are stored as they are. */
    private static final Set<String> COMPRESSED = Set.of(".pdf", ".png");

    static PackedFile of(String name, Text meaning, byte[] bytes) {
        CRC32 crc = new CRC32();
        crc.update(bytes);
        boolean deflated = COMPRESSED.stream().noneMatch(name::endsWith);
        return new PackedFile(
                name,
                meaning,
                bytes.length,
                (int) crc.getValue(),
                HexFormat.of().formatHex(sha256().digest(bytes)),
                deflated,
                deflated ? deflated(bytes) : bytes);
    }

    private static byte[] deflated(byte[] bytes) {
        try (Deflate deflate = new Deflate(Deflate.Frame.NONE)) {
            return deflate.of(bytes);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
