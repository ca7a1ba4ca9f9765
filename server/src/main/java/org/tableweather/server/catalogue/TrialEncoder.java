package org.tableweather.server.catalogue;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/**
 * Trials in PostgreSQL's binary COPY format: a header, then per row the number of fields and each field as its length and
 * bytes, −1 for NULL; all integers big-endian. Half the time of the text form, and no digit of a double is ever printed.
 *
 * @source PostgresCopy
 */
final class TrialEncoder {
    private static final VarHandle SHORT = view(short[].class);
    private static final VarHandle INT = view(int[].class);
    private static final VarHandle LONG = view(long[].class);

    /** The eleven bytes of the format's signature, no flags, no extension. */
    private static final byte[] HEADER = {
        'P', 'G', 'C', 'O', 'P', 'Y', '\n', (byte) 0xff, '\r', '\n', 0, 0, 0, 0, 0, 0, 0, 0, 0
    };

    private static final int LARGEST_FIXED_FIELD = 2 * Integer.BYTES + Long.BYTES;
    private static final long EPOCH_2000_SECONDS = 946_684_800L;
    private static final long MICROS = 1_000_000L;

    private byte[] bytes = new byte[1 << 16];
    private int length;

    private static VarHandle view(Class<?> array) {
        return MethodHandles.byteArrayViewVarHandle(array, ByteOrder.BIG_ENDIAN);
    }

    /** What was encoded since the last {@link #clear}. */
    byte[] bytes() {
        return bytes;
    }

    /** How many of {@link #bytes} count. */
    int length() {
        return length;
    }

    void clear() {
        length = 0;
    }

    void header() {
        ensure(HEADER.length);
        System.arraycopy(HEADER, 0, bytes, length, HEADER.length);
        length += HEADER.length;
    }

    /** The end: a field count of −1. */
    void trailer() {
        fieldCount(-1);
    }

    /**
     * Adds a row: session, ordinal, and these columns.
     *
     * @param ordinal position within the session, from 1
     * @throws UnstorableValue when PostgreSQL has no place for a value
     */
    void row(int sessionId, int ordinal, Trial trial, List<TrialColumn> columns) {
        fieldCount(2 + columns.size());
        whole(sessionId);
        whole(ordinal);
        for (TrialColumn column : columns) {
            column.field().write(trial, this);
        }
    }

    private void fieldCount(int fields) {
        ensure(Short.BYTES);
        SHORT.set(bytes, length, (short) fields);
        length += Short.BYTES;
    }

    void number(double value) {
        if (Double.isNaN(value)) {
            absent();
            return;
        }
        ensure(LARGEST_FIXED_FIELD);
        INT.set(bytes, length, Double.BYTES);
        LONG.set(bytes, length + Integer.BYTES, Double.doubleToRawLongBits(value));
        length += Integer.BYTES + Double.BYTES;
    }

    void count(int value) {
        if (value < 0) {
            absent();
        } else {
            whole(value);
        }
    }

    private void whole(int value) {
        ensure(LARGEST_FIXED_FIELD);
        INT.set(bytes, length, Integer.BYTES);
        INT.set(bytes, length + Integer.BYTES, value);
        length += 2 * Integer.BYTES;
    }

    void made(Made made) {
        if (made == Made.NOT_STATED) {
            absent();
            return;
        }
        ensure(LARGEST_FIXED_FIELD);
        INT.set(bytes, length, 1);
        bytes[length + Integer.BYTES] = (byte) (made == Made.YES ? 1 : 0);
        length += Integer.BYTES + 1;
    }

    /** Microseconds since 2000-01-01 UTC. */
    void time(Optional<Instant> time) {
        if (time.isEmpty()) {
            absent();
            return;
        }
        ensure(LARGEST_FIXED_FIELD);
        INT.set(bytes, length, Long.BYTES);
        LONG.set(bytes, length + Integer.BYTES, micros(time.get()));
        length += Integer.BYTES + Long.BYTES;
    }

    private static long micros(Instant time) {
        try {
            long seconds = Math.subtractExact(time.getEpochSecond(), EPOCH_2000_SECONDS);
            return Math.addExact(Math.multiplyExact(seconds, MICROS), time.getNano() / 1000);
        } catch (ArithmeticException e) {
            throw new UnstorableValue("started_at = " + time + " lies outside the years that a database can hold", e);
        }
    }

    void text(String text) {
        if (text.isEmpty()) {
            absent();
            return;
        }
        int start = length + Integer.BYTES;
        ensure(Integer.BYTES + 3 * text.length());
        int end = ascii(text, start);
        if (end < 0) {
            end = utf8(text, start);
        }
        INT.set(bytes, length, end - start);
        length = end;
    }

    /** The end of the text, or −1 when it is not ASCII alone. */
    private int ascii(String text, int start) {
        int end = start;
        for (int i = 0; i < text.length(); i++) {
            char character = text.charAt(i);
            if (character == 0 || character >= 0x80) {
                return -1;
            }
            bytes[end++] = (byte) character;
        }
        return end;
    }

    private int utf8(String text, int start) {
        if (text.indexOf(0) >= 0) {
            throw new UnstorableValue("the text '" + text.replace('\0', '␀') + "' holds the character U+0000", null);
        }
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        System.arraycopy(utf8, 0, bytes, start, utf8.length);
        return start + utf8.length;
    }

    private void absent() {
        ensure(Integer.BYTES);
        INT.set(bytes, length, -1);
        length += Integer.BYTES;
    }

    private void ensure(int more) {
        if (bytes.length - length < more) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + more));
        }
    }
}
