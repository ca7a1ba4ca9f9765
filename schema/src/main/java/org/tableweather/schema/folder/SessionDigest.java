package org.tableweather.schema.folder;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Instant;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.digest.Sha256;
import org.tableweather.schema.json.ContributionJson;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Cue;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * The digest of a session: SHA-256 over a canonical encoding, so that it depends neither on the order of rows nor on
 * separators, units or packing.
 *
 * <p>First the JSON of {@code {"ballSet", "cue", "instrument", "invented", "room", "session", "table"}}, names sorted,
 * absent ones left out, in UTF-8. Then every trial in canonical order: a presence mask of 64 bits, bit i for component i
 * of {@link Trial} in the order of its declaration, the session id being 0 and left out; then the present components in that order:
 * texts as a 32-bit length and UTF-8 (their SHA-256 in place of more than 1000 bytes), numbers as IEEE 754 binary64 with −0 as 0, counts, kinds, made and climate source
 * as 32 bits (ordinals), times as seconds (64 bits) and nanoseconds (32 bits), the climate as two numbers and its source,
 * the stated uncertainties one by one.
 * All integers big-endian.
 *
 * @source FIPS180
 */
public final class SessionDigest {
    private static final int CAPACITY = 1 << 15;
    private static final int MAX_TEXT = 1000;
    private static final int LARGEST_TRIAL = 5 * MAX_TEXT;
    private static final VarHandle LONGS = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);
    private static final VarHandle INTS = MethodHandles.byteArrayViewVarHandle(int[].class, ByteOrder.BIG_ENDIAN);

    private final MessageDigest sha256 = Sha256.begin();
    private final byte[] buffer = new byte[CAPACITY];
    private int length;
    private int maskAt;
    private long mask;

    SessionDigest() {}

    /**
     * The digest of a session's content, whatever digest its record carries.
     *
     * @param session and what it refers to
     * @param trials all of them in {@link Trial#CANONICAL_ORDER}
     * @return 64 hex digits
     */
    public static String of(SessionRecord session, List<Trial> trials) {
        return new SessionDigest()
                .of(
                        session.invented(),
                        session.room(),
                        session.table(),
                        session.session(),
                        session.ballSet(),
                        session.cue(),
                        session.instrument(),
                        trials);
    }

    /**
     * The digest.
     *
     * @param trials in canonical order
     * @return 64 hex digits
     */
    String of(
            boolean invented,
            Room room,
            PoolTable table,
            Session session,
            Optional<BallSet> ballSet,
            Optional<Cue> cue,
            Optional<Instrument> instrument,
            List<Trial> trials) {
        sha256.reset();
        length = 0;
        Map<String, Object> entries = new LinkedHashMap<>();
        ballSet.ifPresent(value -> entries.put("ballSet", value));
        cue.ifPresent(value -> entries.put("cue", value));
        instrument.ifPresent(value -> entries.put("instrument", value));
        entries.put("invented", invented);
        entries.put("room", room);
        entries.put("session", session);
        entries.put("table", table);
        try {
            sha256.update(ContributionJson.mapper().writeValueAsBytes(entries));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("records of the schema have a JSON form", e);
        }
        for (Trial trial : trials) {
            add(trial);
        }
        sha256.update(buffer, 0, length);
        return HexFormat.of().formatHex(sha256.digest());
    }

    private void add(Trial t) {
        room(LARGEST_TRIAL);
        maskAt = length;
        mask = 0;
        length += Long.BYTES;
        text(1, t.trial());
        time(2, t.startedAt());
        whole(3, t.kind().ordinal());
        text(4, t.shot());
        text(5, t.ball());
        number(6, t.tempC());
        number(7, t.rhPct());
        number(8, t.approachAngleDeg());
        number(9, t.approachSpeedMps());
        number(10, t.sideSpinRps());
        number(11, t.rollRatio());
        number(12, t.tipOffsetMm());
        number(13, t.reboundAngleDeg());
        number(14, t.reboundSpeedMps());
        number(15, t.finalReboundAngleDeg());
        number(16, t.landingOffsetDia());
        whole(17, t.made().ordinal());
        whole(18, t.rails());
        number(19, t.runOutM());
        number(20, t.runOutLengths());
        number(21, t.objectAngleDeg());
        number(22, t.deflectionAngleDeg());
        number(23, t.hopHeightMm());
        whole(24, t.ballsMade());
        number(25, t.spreadNearestMm());
        number(26, t.cueBallTravelM());
        text(27, t.note());
        number(28, t.climate().tempC());
        number(29, t.climate().rhPct());
        whole(30, t.climate().source().ordinal());
        if (t.uncertainty() != OutcomeUncertainty.NONE) {
            uncertainty(t.uncertainty());
        }
        putLong(maskAt, mask);
    }

    private void uncertainty(OutcomeUncertainty u) {
        number(31, u.approachAngleUDeg());
        number(32, u.approachSpeedUMps());
        number(33, u.reboundAngleUDeg());
        number(34, u.reboundSpeedUMps());
        number(35, u.finalReboundAngleUDeg());
        number(36, u.landingOffsetUDia());
        number(37, u.runOutUM());
        number(38, u.runOutULengths());
        number(39, u.objectAngleUDeg());
        number(40, u.deflectionAngleUDeg());
        number(41, u.hopHeightUMm());
        number(42, u.spreadNearestUMm());
        number(43, u.cueBallTravelUM());
    }

    /** Makes room; the mask of the trial at hand must stay in the buffer until it is complete. */
    private void room(int bytes) {
        if (length + bytes > CAPACITY) {
            sha256.update(buffer, 0, length);
            length = 0;
        }
    }

    private void number(int bit, double value) {
        if (value == value) {
            mask |= 1L << bit;
            putLong(length, Double.doubleToRawLongBits(value + 0.0));
            length += Long.BYTES;
        }
    }

    private void whole(int bit, int value) {
        if (value >= 0) {
            mask |= 1L << bit;
            putInt(length, value);
            length += Integer.BYTES;
        }
    }

    private void time(int bit, Optional<Instant> time) {
        if (time.isPresent()) {
            mask |= 1L << bit;
            putLong(length, time.get().getEpochSecond());
            putInt(length + Long.BYTES, time.get().getNano());
            length += Long.BYTES + Integer.BYTES;
        }
    }

    /** Long texts enter as the SHA-256 of their UTF-8, so that a trial always fits the buffer. */
    private void text(int bit, String text) {
        if (text.isEmpty()) {
            return;
        }
        mask |= 1L << bit;
        int size = text.length();
        if (size <= MAX_TEXT && putAscii(text, size)) {
            return;
        }
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        byte[] content = utf8.length <= MAX_TEXT ? utf8 : hash(utf8);
        putInt(length, utf8.length);
        System.arraycopy(content, 0, buffer, length + Integer.BYTES, content.length);
        length += Integer.BYTES + content.length;
    }

    /** Whether the text was ASCII, and so could be put. */
    private boolean putAscii(String text, int size) {
        int seen = 0;
        int at = length + Integer.BYTES;
        for (int i = 0; i < size; i++) {
            char c = text.charAt(i);
            seen |= c;
            buffer[at + i] = (byte) c;
        }
        if (seen >= 0x80) {
            return false;
        }
        putInt(length, size);
        length = at + size;
        return true;
    }

    private static byte[] hash(byte[] content) {
        return Sha256.of(content);
    }

    private void putLong(int at, long value) {
        LONGS.set(buffer, at, value);
    }

    private void putInt(int at, int value) {
        INTS.set(buffer, at, value);
    }
}
