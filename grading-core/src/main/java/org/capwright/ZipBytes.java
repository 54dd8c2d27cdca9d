package org.capwright;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Writes packed files one after another as an archive (ZIP, PKWARE APPNOTE 6.3.3, sections 4.3.7, 4.3.12 and 4.3.16), which no class of Java does with files that are packed already. */
final class ZipBytes {

    private static final int LOCAL = 0x04034b50;
    private static final int CENTRAL = 0x02014b50;
    private static final int END = 0x06054b50;

    /** 2.0 of the format, which has deflating. */
    private static final short VERSION = 20;

    /** Names are in UTF-8. */
    private static final short UTF_8 = 1 << 11;

    private static final short DEFLATED = 8;
    private static final short STORED = 0;

    /** The earliest date that an archive can state, 1 January 1980; it stands for no date. */
    private static final int NO_DATE = 1 << 21 | 1 << 16;

    private final OutputStream out;
    private final List<ByteBuffer> directory = new ArrayList<>();
    private int length;

    private ZipBytes(OutputStream out) {
        this.out = out;
    }

    static void write(List<PackedFile> files, OutputStream out) throws IOException {
        ZipBytes zip = new ZipBytes(out);
        for (PackedFile file : files) {
            zip.add(file);
        }
        zip.finish();
    }

    private void add(PackedFile file) throws IOException {
        byte[] name = file.name().getBytes(StandardCharsets.UTF_8);
        directory.add(described(room(46 + name.length).putInt(CENTRAL).putShort(VERSION), file, name)
                .putShort((short) 0) // comment
                .putShort((short) 0) // disk
                .putShort((short) 0) // what the file is like inside
                .putInt(0) // and outside
                .putInt(length)
                .put(name));
        put(described(room(30 + name.length).putInt(LOCAL), file, name).put(name));
        out.write(file.content());
        length += file.content().length;
    }

    /** What is said of a file at both places. */
    private static ByteBuffer described(ByteBuffer header, PackedFile file, byte[] name) {
        return header.putShort(VERSION)
                .putShort(UTF_8)
                .putShort(file.deflated() ? DEFLATED : STORED)
                .putInt(NO_DATE)
                .putInt(file.crc())
                .putInt(file.content().length)
                .putInt(file.size())
                .putShort((short) name.length)
                .putShort((short) 0); // extra field
    }

    private void finish() throws IOException {
        int begins = length;
        for (ByteBuffer header : directory) {
            put(header);
        }
        short count = (short) directory.size();
        put(room(22).putInt(END)
                .putInt(0) // disks
                .putShort(count)
                .putShort(count)
                .putInt(length - begins)
                .putInt(begins)
                .putShort((short) 0)); // comment
    }

    private static ByteBuffer room(int bytes) {
        return ByteBuffer.allocate(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }

    private void put(ByteBuffer bytes) throws IOException {
        out.write(bytes.array());
        length += bytes.capacity();
    }
}
