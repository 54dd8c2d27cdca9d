package org.capwright.service.orders;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** The files of an order in one archive, not compressed: its bytes then do not hang on the platform's compressor, and never change either. */
final class OrderArchive {

    private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

    private OrderArchive() {}

    static byte[] of(List<DrawnFile> files) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (DrawnFile file : files) {
                CRC32 sum = new CRC32();
                sum.update(file.bytes());
                ZipEntry entry = new ZipEntry("order." + file.format());
                entry.setMethod(ZipEntry.STORED);
                entry.setSize(file.bytes().length);
                entry.setCompressedSize(file.bytes().length);
                entry.setCrc(sum.getValue());
                entry.setTimeLocal(NO_TIME);
                zip.putNextEntry(entry);
                zip.write(file.bytes());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
