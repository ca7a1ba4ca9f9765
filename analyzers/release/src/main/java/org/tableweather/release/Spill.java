package org.tableweather.release;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A temporary file into which sessions and readings are put in the order they come, and from which each is taken when its turn is: memory
 * holds only where they lie.
 */
final class Spill implements Closeable {
    private static final int BUFFER = 1 << 20;

    private final Path path;
    private final FileChannel file;
    private final ByteArrayOutputStream buffer = new ByteArrayOutputStream(BUFFER);
    private final DataOutputStream out = new DataOutputStream(buffer);
    private long flushed;

    Spill(Path folder) throws IOException {
        path = Files.createTempFile(folder, "sessions", ".tmp");
        file = FileChannel.open(path, StandardOpenOption.READ, StandardOpenOption.WRITE);
    }

    /**
     * Where something lies.
     *
     * @param offset of its first byte
     * @param bytes how many
     */
    record Extent(long offset, int bytes) {}

    /** Writes one thing. */
    interface Content {
        void write(DataOutputStream to) throws IOException;
    }

    Extent put(Content content) throws IOException {
        int from = buffer.size();
        content.write(out);
        Extent extent = new Extent(flushed + from, buffer.size() - from);
        if (buffer.size() >= BUFFER) {
            flush();
        }
        return extent;
    }

    Extent put(String text) throws IOException {
        return put(to -> to.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    private void flush() throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(buffer.toByteArray());
        while (bytes.hasRemaining()) {
            file.write(bytes);
        }
        flushed += buffer.size();
        buffer.reset();
    }

    DataInputStream take(Extent extent) throws IOException {
        return new DataInputStream(new ByteArrayInputStream(bytes(extent)));
    }

    String text(Extent extent) throws IOException {
        return new String(bytes(extent), StandardCharsets.UTF_8);
    }

    private byte[] bytes(Extent extent) throws IOException {
        if (buffer.size() > 0) {
            flush();
        }
        ByteBuffer bytes = ByteBuffer.allocate(extent.bytes());
        while (bytes.hasRemaining()) {
            if (file.read(bytes, extent.offset() + bytes.position()) < 0) {
                throw new EOFException(path + " was cut short while it was in use");
            }
        }
        return bytes.array();
    }

    @Override
    public void close() throws IOException {
        file.close();
        Files.deleteIfExists(path);
    }
}
