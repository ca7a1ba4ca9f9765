package org.tableweather.release;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/**
 * Trials in a temporary file: a mask of what is there, then the values. Session, kind and shot are known from where the
 * trial lies.
 */
final class TrialCodec {
    private static final List<TrialNumber> NUMBERS = List.of(TrialNumber.values());
    private static final long TIME = 1L << NUMBERS.size();
    private static final long BALL = TIME << 1;
    private static final long NOTE = TIME << 2;
    private static final long RAILS = TIME << 3;
    private static final long BALLS_MADE = TIME << 4;
    private static final long MADE = TIME << 5;
    private static final Made[] MADES = Made.values();
    private static final ClimateSource[] SOURCES = ClimateSource.values();

    private TrialCodec() {}

    /** Which columns a trial fills, of those that need not be filled. */
    static long mask(Trial trial) {
        long mask = 0;
        for (int i = 0; i < NUMBERS.size(); i++) {
            if (!Double.isNaN(NUMBERS.get(i).of(trial))) {
                mask |= 1L << i;
            }
        }
        mask |= trial.startedAt().isPresent() ? TIME : 0;
        mask |= trial.ball().isEmpty() ? 0 : BALL;
        mask |= trial.note().isEmpty() ? 0 : NOTE;
        mask |= trial.rails() < 0 ? 0 : RAILS;
        mask |= trial.ballsMade() < 0 ? 0 : BALLS_MADE;
        return mask | (trial.made() == Made.NOT_STATED ? 0 : MADE);
    }

    /** The names of the columns of such a mask. */
    static List<String> columns(long mask) {
        List<String> names = new java.util.ArrayList<>();
        for (int i = 0; i < NUMBERS.size(); i++) {
            add(names, mask, 1L << i, NUMBERS.get(i).column());
        }
        add(names, mask, TIME, "started_at");
        add(names, mask, BALL, "ball");
        add(names, mask, NOTE, "note");
        add(names, mask, RAILS, "rails");
        add(names, mask, BALLS_MADE, "balls_made");
        add(names, mask, MADE, "made");
        return names;
    }

    private static void add(List<String> names, long mask, long bit, String name) {
        if ((mask & bit) != 0) {
            names.add(name);
        }
    }

    static void write(Trial trial, int ordinal, long mask, DataOutput out) throws IOException {
        out.writeLong(mask);
        out.writeInt(ordinal);
        text(trial.trial(), out);
        for (int i = 0; i < NUMBERS.size(); i++) {
            if ((mask & 1L << i) != 0) {
                out.writeDouble(NUMBERS.get(i).of(trial));
            }
        }
        if (trial.startedAt().isPresent()) {
            out.writeLong(trial.startedAt().get().getEpochSecond());
            out.writeInt(trial.startedAt().get().getNano());
        }
        if ((mask & BALL) != 0) {
            text(trial.ball(), out);
        }
        if ((mask & NOTE) != 0) {
            text(trial.note(), out);
        }
        out.writeInt(trial.rails());
        out.writeInt(trial.ballsMade());
        out.writeByte(trial.made().ordinal());
        out.writeByte(trial.climate().source().ordinal());
    }

    /**
     * Reads a trial back.
     *
     * @param parts for it, used again for each
     * @param takeOrdinal told its ordinal
     */
    static Trial read(
            DataInput in,
            TrialParts parts,
            String session,
            Kind kind,
            String shot,
            java.util.function.IntConsumer takeOrdinal)
            throws IOException {
        long mask = in.readLong();
        takeOrdinal.accept(in.readInt());
        parts.session = session;
        parts.kind = kind;
        parts.shot = shot;
        parts.trial = text(in);
        for (int i = 0; i < NUMBERS.size(); i++) {
            parts.numbers[i] = (mask & 1L << i) != 0 ? in.readDouble() : Double.NaN;
        }
        parts.startedAt =
                (mask & TIME) != 0 ? Optional.of(Instant.ofEpochSecond(in.readLong(), in.readInt())) : Optional.empty();
        parts.ball = (mask & BALL) != 0 ? text(in) : "";
        parts.note = (mask & NOTE) != 0 ? text(in) : "";
        parts.rails = in.readInt();
        parts.ballsMade = in.readInt();
        parts.made = MADES[in.readByte()];
        parts.source = SOURCES[in.readByte()];
        return parts.whole();
    }

    static void text(String text, DataOutput out) throws IOException {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        out.writeInt(utf8.length);
        out.write(utf8);
    }

    static String text(DataInput in) throws IOException {
        byte[] utf8 = new byte[in.readInt()];
        in.readFully(utf8);
        return new String(utf8, StandardCharsets.UTF_8);
    }
}
