package org.tableweather.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.LongConsumer;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** Summaries of released sessions: the very ones that the folders give which went in. */
public final class ReleasedSummaries {
    private ReleasedSummaries() {}

    /**
     * Reads and summarises.
     *
     * @param analyzer whose summaries
     * @param trials what to read
     * @param progress told the trials read so far
     * @return one summary a session, in the order of the files
     * @throws IOException as {@link ReleasedTrials#sessions}
     */
    public static <S> List<SessionSummary<S>> read(Analyzer<S> analyzer, ReleasedTrials trials, LongConsumer progress)
            throws IOException {
        List<SessionSummary<S>> summaries = new ArrayList<>();
        long[] rows = new long[1];
        trials.sessions((session, all) -> {
            summaries.add(new SessionSummary<>(
                    session.roomKey(),
                    session.sessionKey(),
                    session.digest(),
                    session.invented(),
                    all.size(),
                    analyzer.summarise(session, all)));
            rows[0] += all.size();
            progress.accept(rows[0]);
        });
        return summaries;
    }
}
