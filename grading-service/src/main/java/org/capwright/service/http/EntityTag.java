package org.capwright.service.http;

import java.util.HexFormat;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;

/** Entity tags of answers (RFC 9110, section 8.8.3): the same bytes, the same tag. */
public final class EntityTag {

    private EntityTag() {}

    /**
     * The tag of an answer. It is weak, for an answer with a strong one may not be compressed on its way.
     *
     * @param body the answer
     * @return a weak tag made of the length and two sums of 32 bits (ISO 3309 and RFC 3720): nobody need be kept from making another body of the same tag, and a stronger sum would take a good part of the time of writing
     */
    public static String of(byte[] body) {
        CRC32 sum = new CRC32();
        sum.update(body);
        CRC32C other = new CRC32C();
        other.update(body);
        HexFormat hexadecimal = HexFormat.of();
        return "W/\"" + hexadecimal.toHexDigits(body.length, 8) + hexadecimal.toHexDigits(sum.getValue(), 8)
                + hexadecimal.toHexDigits(other.getValue(), 8) + "\"";
    }
}
