package org.capwright.service.http;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** Entity tags of answers (RFC 9110, section 8.8.3): the same bytes, the same tag. */
public final class EntityTag {

    private EntityTag() {}

    /**
     * The tag of an answer. It is weak, for an answer with a strong one may not be compressed on its way.
     *
     * @param body the answer
     * @return a weak tag made of the SHA-256 sum of the bytes
     */
    public static String of(byte[] body) {
        try {
            return "W/\""
                    + HexFormat.of()
                            .formatHex(MessageDigest.getInstance("SHA-256").digest(body))
                    + "\"";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
