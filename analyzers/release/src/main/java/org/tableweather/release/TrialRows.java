package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/** A run of trials of one Parquet file. */
final class TrialRows implements Closeable {
    private static final List<String> TEXTS = List.of(
            "kind",
            "shot",
            TrialTable.ROOM_KEY,
            TrialTable.SESSION_KEY,
            TrialTable.SESSION_DIGEST,
            "session",
            "trial",
            "started_at",
            TrialTable.STARTED_AT_NS,
            "ball",
            "made",
            "rails",
            "balls_made",
            TrialTable.CLIMATE_SOURCE,
            "note",
            TrialTable.SESSION_TRIALS,
            TrialTable.SESSION_RECORD);
    private static final int KIND = 0;
    private static final int SHOT = 1;
    private static final int ROOM_KEY = 2;
    private static final int SESSION_KEY = 3;
    private static final int DIGEST = 4;
    private static final int SESSION = 5;
    private static final int TRIAL = 6;
    private static final int STARTED_AT = 7;
    private static final int STARTED_AT_NS = 8;
    private static final int BALL = 9;
    private static final int MADE = 10;
    private static final int RAILS = 11;
    private static final int BALLS_MADE = 12;
    private static final int SOURCE = 13;
    private static final int NOTE = 14;
    private static final int SESSION_TRIALS = 15;
    private static final int SESSION_RECORD = 16;
    private static final int NUMBERS = TEXTS.size();
    private static final long MICROS = 1_000_000;
    private static final long NANOS_OF_MICRO = 1000;
    private static final Map<String, ClimateSource> SOURCES = sources();

    private final Path path;
    private final ParquetRows rows;
    private final TrialParts parts = new TrialParts();

    TrialRows(Path path, long first, long count) throws IOException {
        this.path = path;
        List<String> columns = new ArrayList<>(TEXTS);
        for (TrialNumber number : TrialNumber.values()) {
            columns.add(number.column());
        }
        rows = new ParquetRows(path, columns, first, count);
        try {
            for (int column : new int[] {KIND, SHOT, ROOM_KEY, SESSION_KEY, DIGEST, SESSION, TRIAL, SOURCE}) {
                if (!rows.has(column)) {
                    throw new IOException(
                            path + " is no table of trials of a release: it has no column " + TEXTS.get(column));
                }
            }
        } catch (IOException e) {
            rows.close();
            throw e;
        }
    }

    private static Map<String, ClimateSource> sources() {
        Map<String, ClimateSource> sources = new HashMap<>();
        for (ClimateSource source : ClimateSource.values()) {
            sources.put(source.schemaName(), source);
        }
        return Map.copyOf(sources);
    }

    long rowsOfFile() {
        return rows.rowsOfFile();
    }

    /** Whether every row holds its session as JSON. */
    boolean holdsSessions() {
        return rows.has(SESSION_RECORD) && rows.has(SESSION_TRIALS);
    }

    boolean next() throws IOException {
        return rows.next();
    }

    String roomKey() {
        return rows.text(ROOM_KEY);
    }

    String sessionKey() {
        return rows.text(SESSION_KEY);
    }

    String digest() {
        return rows.text(DIGEST);
    }

    String sessionJson() {
        return rows.text(SESSION_RECORD);
    }

    int sessionTrials() {
        return rows.count(SESSION_TRIALS);
    }

    /**
     * The trial of this row.
     *
     * @throws IOException when a cell cannot be understood
     */
    Trial trial() throws IOException {
        parts.session = rows.text(SESSION);
        parts.trial = rows.text(TRIAL);
        parts.startedAt = startedAt();
        String kind = rows.text(KIND);
        parts.kind = Kind.of(kind).orElseThrow(() -> unknown("kind", kind));
        parts.shot = rows.text(SHOT);
        parts.ball = rows.text(BALL);
        parts.made = rows.isEmpty(MADE) ? Made.NOT_STATED : rows.truth(MADE) ? Made.YES : Made.NO;
        parts.rails = rows.count(RAILS);
        parts.ballsMade = rows.count(BALLS_MADE);
        parts.note = rows.text(NOTE);
        String source = rows.text(SOURCE);
        parts.source =
                Optional.ofNullable(SOURCES.get(source)).orElseThrow(() -> unknown(TrialTable.CLIMATE_SOURCE, source));
        for (int i = 0; i < parts.numbers.length; i++) {
            parts.numbers[i] = rows.number(NUMBERS + i);
        }
        return parts.whole();
    }

    private Optional<Instant> startedAt() {
        if (rows.isEmpty(STARTED_AT)) {
            return Optional.empty();
        }
        long micros = rows.whole(STARTED_AT);
        long beyond = Math.max(0, rows.count(STARTED_AT_NS));
        return Optional.of(Instant.ofEpochSecond(
                Math.floorDiv(micros, MICROS), Math.floorMod(micros, MICROS) * NANOS_OF_MICRO + beyond));
    }

    private IOException unknown(String column, String value) {
        return new IOException(path + ": column " + column + " has \"" + value
                + "\", which is not known: was it written " + "by a newer version of this program?");
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
