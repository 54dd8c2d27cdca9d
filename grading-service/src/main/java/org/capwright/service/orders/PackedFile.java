package org.capwright.service.orders;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.capwright.service.store.Fingerprint;

/**
 * A file as it is kept.
 *
 * @param file its fingerprint and its bytes when it is unpacked
 * @param packed compressed (zlib, RFC 1950)
 */
record PackedFile(OrderFile file, byte[] packed) {

    /** Quickly rather than small, and not at all what is compressed as it is. */
    static PackedFile of(DrawnFile drawn) {
        byte[] bytes = drawn.bytes();
        Deflater quick = new Deflater(drawn.format().equals("pdf") ? Deflater.NO_COMPRESSION : Deflater.BEST_SPEED);
        ByteArrayOutputStream packed = new ByteArrayOutputStream(bytes.length / 2 + 64);
        try (DeflaterOutputStream out = new DeflaterOutputStream(packed, quick, 8192)) {
            out.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            quick.end();
        }
        return new PackedFile(new OrderFile(drawn.format(), Fingerprint.of(bytes), bytes.length), packed.toByteArray());
    }

    static byte[] unpacked(byte[] packed) {
        try (InflaterInputStream in = new InflaterInputStream(new ByteArrayInputStream(packed))) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
