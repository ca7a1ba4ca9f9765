package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.SessionRecord;

/** Puts the columns of sessions together from the runs of their shots, which are all in the order of the table of sessions. */
final class ColumnMerge implements Closeable {
    private static final List<String> COLUMNS = List.of(SessionColumns.RECORD, SessionColumns.TRIALS);

    /** Takes sessions. */
    interface Sink {
        void accept(SessionRecord session, TrialColumns trials) throws IOException;
    }

    private final List<ColumnRun> all;
    private final Map<String, List<ColumnRun>> byDigest = new HashMap<>();
    private final HeldColumns held;

    ColumnMerge(List<ColumnRun> runs, Set<TrialNumber> wanted) {
        all = runs;
        held = new HeldColumns(wanted);
        runs.forEach(this::await);
    }

    private void await(ColumnRun run) {
        if (!run.digest().isEmpty()) {
            byDigest.computeIfAbsent(run.digest(), digest -> new ArrayList<>()).add(run);
        }
    }

    /**
     * Hands over every session of a table, each in the same arrays.
     *
     * @throws IOException when the tables do not fit each other
     */
    void read(Path table, Sink sink) throws IOException {
        try (ParquetRows sessions = new ParquetRows(table, COLUMNS, 0, Long.MAX_VALUE)) {
            while (sessions.next()) {
                SessionRecord session = SessionJson.read(sessions.text(0), table.toString());
                hold(session, sessions.count(1));
                if (held.taken() != held.size()) {
                    throw new IOException(table + ": session " + session.sessionKey() + " should have "
                            + held.size() + " trials, the tables of trials have " + held.taken()
                            + " at its place: verify the release");
                }
                sink.accept(session, held);
            }
        }
        if (!byDigest.isEmpty()) {
            throw new IOException(table + " has no session of the digest "
                    + byDigest.keySet().iterator().next() + ", which has trials: verify the release");
        }
    }

    private void hold(SessionRecord session, int trials) throws IOException {
        held.begin(trials);
        List<ColumnRun> runs = byDigest.remove(session.digest());
        if (runs != null) {
            for (ColumnRun run : runs) {
                run.takeSession(held);
                await(run);
            }
        }
    }

    @Override
    public void close() throws IOException {
        for (ColumnRun run : all) {
            run.close();
        }
    }
}
