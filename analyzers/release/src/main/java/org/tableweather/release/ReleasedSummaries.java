package org.tableweather.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.ColumnarAnalyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.record.SessionRecord;

/** Summaries of released sessions: the very ones that the folders give which went in. */
public final class ReleasedSummaries {
    private ReleasedSummaries() {}

    /**
     * Reads and summarises, on all processors.
     *
     * @param analyzer whose summaries
     * @param trials what to read
     * @param progress told the trials read so far
     * @return one summary a session, in the order of the files
     * @throws IOException as {@link ReleasedTrials#sessions}
     */
    public static <S> List<SessionSummary<S>> read(Analyzer<S> analyzer, ReleasedTrials trials, LongConsumer progress)
            throws IOException {
        return read(analyzer, trials, Runtime.getRuntime().availableProcessors(), progress);
    }

    /**
     * Reads and summarises. A {@link ColumnarAnalyzer} is given columns, read by room group, on several threads; another one trials,
     * on this thread.
     *
     * @param analyzer whose summaries
     * @param trials what to read
     * @param threads how many at most, from 1
     * @param progress told the trials read so far, by one thread at a time
     * @return one summary a session, in the order of the files, the same whatever the threads
     * @throws IOException as {@link ReleasedTrials#sessions}
     */
    public static <S> List<SessionSummary<S>> read(
            Analyzer<S> analyzer, ReleasedTrials trials, int threads, LongConsumer progress) throws IOException {
        if (analyzer instanceof ColumnarAnalyzer<S> columnar
                && trials.completeSessions().isPresent()) {
            return new ColumnScan<>(trials.completeSessions().get(), columnar, progress).read(threads);
        }
        return byRows(analyzer, trials, progress);
    }

    /**
     * Reads and summarises the sessions of one room group.
     *
     * @param analyzer whose summaries
     * @param release of the group
     * @param roomGroup one of {@link ReleaseFolder#roomGroups()}
     * @param to takes one summary a session, in the order of the files
     * @throws IOException as {@link ReleaseFolder#sessions(String, SessionSink)}
     */
    public static <S> void ofGroup(
            Analyzer<S> analyzer, ReleaseFolder release, String roomGroup, Consumer<SessionSummary<S>> to)
            throws IOException {
        if (analyzer instanceof ColumnarAnalyzer<S> columnar) {
            release.columns(
                    roomGroup,
                    columnar.numbers(),
                    (session, trials) ->
                            to.accept(summary(session, trials.size(), columnar.summarise(session, trials))));
        } else {
            release.sessions(
                    roomGroup,
                    (session, trials) ->
                            to.accept(summary(session, trials.size(), analyzer.summarise(session, trials))));
        }
    }

    private static <S> SessionSummary<S> summary(SessionRecord session, int trials, S summary) {
        return new SessionSummary<>(
                session.roomKey(), session.sessionKey(), session.digest(), session.invented(), trials, summary);
    }

    private static <S> List<SessionSummary<S>> byRows(
            Analyzer<S> analyzer, ReleasedTrials trials, LongConsumer progress) throws IOException {
        List<SessionSummary<S>> summaries = new ArrayList<>();
        long[] rows = new long[1];
        trials.sessions((session, all) -> {
            summaries.add(summary(session, all.size(), analyzer.summarise(session, all)));
            rows[0] += all.size();
            progress.accept(rows[0]);
        });
        return summaries;
    }
}
