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
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
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
