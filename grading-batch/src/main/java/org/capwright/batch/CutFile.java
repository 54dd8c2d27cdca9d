package org.capwright.batch;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A file that an order is cut by.
 *
 * @param format the end of its name, such as {@code pdf}
 * @param content its bytes
 */
public record CutFile(String format, byte[] content) {

    /**
     * The fingerprint by which the service names its files too.
     *
     * @return SHA-256 in 64 hexadecimal digits
     */
    public String sha256() {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
