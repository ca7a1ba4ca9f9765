package org.tableweather.schema.folder;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/** Writes zip archives byte by byte, so that they can also be wrong. */
final class RawZip {
    private static final int LOCAL = 0x04034b50;
    private static final int CENTRAL = 0x02014b50;
    private static final int END = 0x06054b50;

    private final List<Entry> entries = new ArrayList<>();

    /**
     * One entry.
     *
     * @param name as written, allowed or not
     * @param flags general purpose bits; bit 0 says encrypted
     * @param deflated the packed bytes
     * @param size the stated unpacked size
     * @param crc the stated CRC-32
     */
    private record Entry(String name, int flags, byte[] deflated, long size, long crc) {}

    RawZip add(String name, String text) {
        return add(name, 0, text);
    }

    RawZip add(String name, int flags, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        CRC32 crc = new CRC32();
        crc.update(bytes);
        entries.add(new Entry(name, flags, deflate(bytes, true), bytes.length, crc.getValue()));
        return this;
    }

    /** Zeros: blocks that are packed once and repeated, so that gigabytes cost nothing to write. */
    RawZip addZeros(String name, int mebibytes, long statedSize) {
        byte[] block = deflate(new byte[1 << 20], false);
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        for (int i = 0; i < mebibytes; i++) {
            packed.writeBytes(block);
        }
        packed.writeBytes(deflate(new byte[0], true));
        entries.add(new Entry(name, 0, packed.toByteArray(), statedSize, 0));
        return this;
    }

    private static byte[] deflate(byte[] bytes, boolean last) {
        Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION, true);
        deflater.setInput(bytes);
        if (last) {
            deflater.finish();
        }
        byte[] buffer = new byte[bytes.length + 1024];
        int length = deflater.deflate(buffer, 0, buffer.length, last ? Deflater.NO_FLUSH : Deflater.FULL_FLUSH);
        deflater.end();
        return java.util.Arrays.copyOf(buffer, length);
    }

    void writeTo(Path archive) throws IOException {
        try (OutputStream out = Files.newOutputStream(archive)) {
            long offset = 0;
            ByteArrayOutputStream directory = new ByteArrayOutputStream();
            for (Entry entry : entries) {
                byte[] local = header(entry, LOCAL, 0);
                directory.writeBytes(header(entry, CENTRAL, offset));
                out.write(local);
                out.write(entry.deflated());
                offset += local.length + entry.deflated().length;
            }
            out.write(directory.toByteArray());
            ByteBuffer end = ByteBuffer.allocate(22).order(ByteOrder.LITTLE_ENDIAN);
            end.putInt(END).putInt(0).putShort((short) entries.size()).putShort((short) entries.size());
            end.putInt(directory.size()).putInt((int) offset).putShort((short) 0);
            out.write(end.array());
        }
    }

    private static byte[] header(Entry entry, int signature, long offset) {
        byte[] name = entry.name().getBytes(StandardCharsets.UTF_8);
        boolean central = signature == CENTRAL;
        ByteBuffer header =
                ByteBuffer.allocate((central ? 46 : 30) + name.length).order(ByteOrder.LITTLE_ENDIAN);
        header.putInt(signature);
        if (central) {
            header.putShort((short) 20);
        }
        header.putShort((short) 20)
                .putShort((short) (entry.flags() | 0x800))
                .putShort((short) 8)
                .putInt(0x00210000);
        header.putInt((int) entry.crc()).putInt(entry.deflated().length).putInt((int) entry.size());
        header.putShort((short) name.length).putShort((short) 0);
        if (central) {
            header.putShort((short) 0)
                    .putShort((short) 0)
                    .putShort((short) 0)
                    .putInt(0)
                    .putInt((int) offset);
        }
        header.put(name);
        return header.array();
    }
}
