package org.capwright.service.store;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256, FIPS 180-4. */
public final class Fingerprint {

    private Fingerprint() {}

    /**
     * The fingerprint of some bytes.
     *
     * @param bytes any
     * @return 64 hexadecimal digits, lower case
     */
    public static String of(byte[] bytes) {
        return HexFormat.of().formatHex(digest().digest(bytes));
    }

    /**
     * Takes the fingerprint of what comes piece by piece.
     *
     * @return a digest with nothing in it yet
     */
    public static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /**
     * The fingerprint of a text.
     *
     * @param text any
     * @return that of its UTF-8
     */
    public static String of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }
}
