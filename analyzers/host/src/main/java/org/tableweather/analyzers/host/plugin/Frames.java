package org.tableweather.analyzers.host.plugin;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.util.Optional;

/** Messages on a stream: a mark and the length, four bytes each, then that many bytes. */
final class Frames {
    private static final int MARK = 0x54576631;
    private static final int LARGEST = 256 << 20;

    private Frames() {}

    static void write(OutputStream out, byte[] message) throws IOException {
        out.write(ByteBuffer.allocate(2 * Integer.BYTES)
                .putInt(MARK)
                .putInt(message.length)
                .array());
        out.write(message);
        out.flush();
    }

    /**
     * The next message, empty at the end of the stream.
     *
     * @throws IOException when there is something else on the stream
     */
    static Optional<byte[]> read(InputStream in) throws IOException {
        byte[] head = in.readNBytes(2 * Integer.BYTES);
        if (head.length == 0) {
            return Optional.empty();
        }
        if (head.length < 2 * Integer.BYTES) {
            throw new EOFException("the stream ends in the head of a message");
        }
        ByteBuffer numbers = ByteBuffer.wrap(head);
        int mark = numbers.getInt();
        int length = numbers.getInt();
        if (mark != MARK || length < 0 || length > LARGEST) {
            throw new IOException("there is something on the stream that is no message");
        }
        byte[] message = new byte[length];
        new DataInputStream(in).readFully(message);
        return Optional.of(message);
    }
}
