package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Puts sessions together from the runs of their shots, which are all in the order of sessions. */
final class SessionMerge implements Closeable {
    private static final List<String> COLUMNS = List.of(SessionColumns.RECORD, SessionColumns.TRIALS);

    private final List<TrialRun> all;
    private final PriorityQueue<TrialRun> runs = new PriorityQueue<>(TrialRun.ORDER);
    private final boolean parts;

    /**
     * Starts.
     *
     * @param runs of the trials
     * @param parts whether sessions may be there in part, or not at all
     */
    SessionMerge(List<TrialRun> runs, boolean parts) {
        all = runs;
        this.parts = parts;
        runs.stream().filter(TrialRun::hasMore).forEach(this.runs::add);
    }

    /**
     * Hands over every session of a table.
     *
     * @throws IOException when the tables do not fit each other
     */
    void read(Path table, SessionSink sink) throws IOException {
        try (ParquetRows sessions = new ParquetRows(table, COLUMNS, 0, Long.MAX_VALUE)) {
            while (sessions.next()) {
                SessionRecord session = SessionJson.read(sessions.text(0), table.toString());
                List<Trial> trials = trials(session.digest());
                if (parts && trials.size() != sessions.count(1)) {
                    if (!trials.isEmpty()) {
                        sink.accept(TrialParquet.part(session, trials), trials);
                    }
                    continue;
                }
                if (trials.size() != sessions.count(1)) {
                    throw new IOException(table + ": session " + session.sessionKey() + " should have "
                            + sessions.count(1) + " trials, the tables of trials have " + trials.size()
                            + " at its place: verify the release");
                }
                sink.accept(session, trials);
            }
        }
        if (!runs.isEmpty()) {
            throw new IOException(
                    table + " has no session " + runs.peek().sessionKey() + ", which has trials: verify the release");
        }
    }

    private List<Trial> trials(String digest) throws IOException {
        List<Trial> trials = new ArrayList<>();
        int shots = 0;
        while (!runs.isEmpty() && runs.peek().digest().equals(digest)) {
            TrialRun run = runs.poll();
            run.takeSession(digest, trials);
            shots++;
            if (run.hasMore()) {
                runs.add(run);
            }
        }
        if (shots > 1) {
            trials.sort(Trial.CANONICAL_ORDER);
        }
        return trials;
    }

    @Override
    public void close() throws IOException {
        for (TrialRun run : all) {
            run.close();
        }
    }
}
