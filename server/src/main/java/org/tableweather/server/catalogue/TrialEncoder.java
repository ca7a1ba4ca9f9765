package org.tableweather.server.catalogue;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
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

    private static final short FIELDS = (short) (2 + TrialColumn.values().length);
    private static final int FIXED_PART = 2 + FIELDS * 12;
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
        ensure(Short.BYTES);
        SHORT.set(bytes, length, (short) -1);
        length += Short.BYTES;
    }

    /**
     * Adds a row.
     *
     * @param ordinal position within the session, from 1
     * @throws UnstorableValue when PostgreSQL has no place for a value
     */
    void row(int sessionId, int ordinal, Trial trial) {
        ensure(FIXED_PART);
        SHORT.set(bytes, length, FIELDS);
        length += Short.BYTES;
        whole(sessionId);
        whole(ordinal);
        setup(trial);
        outcome(trial);
        text(trial.note());
        ensure(FIXED_PART);
        number(trial.climate().tempC());
        number(trial.climate().rhPct());
        text(trial.climate().source().schemaName());
    }

    private void setup(Trial trial) {
        text(trial.trial());
        time(trial.startedAt());
        text(trial.kind().schemaName());
        text(trial.shot());
        text(trial.ball());
        ensure(FIXED_PART);
        number(trial.tempC());
        number(trial.rhPct());
        number(trial.approachAngleDeg());
        number(trial.approachSpeedMps());
        number(trial.sideSpinRps());
        number(trial.rollRatio());
        number(trial.tipOffsetMm());
    }

    private void outcome(Trial trial) {
        number(trial.reboundAngleDeg());
        number(trial.reboundSpeedMps());
        number(trial.finalReboundAngleDeg());
        number(trial.landingOffsetDia());
        made(trial.made());
        count(trial.rails());
        number(trial.runOutM());
        number(trial.runOutLengths());
        number(trial.objectAngleDeg());
        number(trial.deflectionAngleDeg());
        number(trial.hopHeightMm());
        count(trial.ballsMade());
        number(trial.spreadNearestMm());
        number(trial.cueBallTravelM());
    }

    private void number(double value) {
        if (Double.isNaN(value)) {
            absent();
            return;
        }
        INT.set(bytes, length, Double.BYTES);
        LONG.set(bytes, length + Integer.BYTES, Double.doubleToRawLongBits(value));
        length += Integer.BYTES + Double.BYTES;
    }

    private void whole(int value) {
        INT.set(bytes, length, Integer.BYTES);
        INT.set(bytes, length + Integer.BYTES, value);
        length += 2 * Integer.BYTES;
    }

    private void count(int value) {
        if (value < 0) {
            absent();
        } else {
            whole(value);
        }
    }

    private void made(Made made) {
        if (made == Made.NOT_STATED) {
            absent();
            return;
        }
        INT.set(bytes, length, 1);
        bytes[length + Integer.BYTES] = (byte) (made == Made.YES ? 1 : 0);
        length += Integer.BYTES + 1;
    }

    /** Microseconds since 2000-01-01 UTC. */
    private void time(Optional<Instant> time) {
        ensure(FIXED_PART);
        if (time.isEmpty()) {
            absent();
            return;
        }
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

    private void text(String text) {
        if (text.isEmpty()) {
            ensure(FIXED_PART);
            absent();
            return;
        }
        int characters = text.length();
        ensure(FIXED_PART + 3 * characters);
        int start = length + Integer.BYTES;
        int end = start;
        for (int i = 0; i < characters; i++) {
            char character = text.charAt(i);
            if (character == 0) {
                throw new UnstorableValue(
                        "the text '" + text.replace('\0', '␀') + "' holds the character U+0000", null);
            }
            if (character >= 0x80) {
                end = notAscii(text, start);
                break;
            }
            bytes[end++] = (byte) character;
        }
        INT.set(bytes, length, end - start);
        length = end;
    }

    private int notAscii(String text, int start) {
        if (text.indexOf(0) >= 0) {
            throw new UnstorableValue("the text '" + text.replace('\0', '␀') + "' holds the character U+0000", null);
        }
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        System.arraycopy(utf8, 0, bytes, start, utf8.length);
        return start + utf8.length;
    }

    private void absent() {
        INT.set(bytes, length, -1);
        length += Integer.BYTES;
    }

    private void ensure(int more) {
        if (bytes.length - length < more) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + more));
        }
    }
}
