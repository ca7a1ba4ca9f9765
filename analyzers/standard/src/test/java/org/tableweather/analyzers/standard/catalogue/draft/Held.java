package org.tableweather.analyzers.standard.catalogue.draft;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * A session and its trials.
 *
 * @param session what is stated of it
 * @param trials all of them
 */
public record Held(SessionRecord session, List<Trial> trials) {

    /** Summarises and concludes, as a host would. */
    public static <S> Analysis analysed(Analyzer<S> analyzer, List<Held> pool, Map<String, String> set) {
        List<SummarySource.SessionSummary<S>> summaries = new ArrayList<>();
        for (Held held : pool) {
            SessionRecord session = held.session();
            summaries.add(new SummarySource.SessionSummary<>(
                    session.roomKey(),
                    session.sessionKey(),
                    session.digest(),
                    session.invented(),
                    held.trials().size(),
                    analyzer.summarise(session, held.trials())));
        }
        return analyzer.conclude(source(summaries), Parameters.of(analyzer.info(), set));
    }

    private static <S> SummarySource<S> source(List<SummarySource.SessionSummary<S>> summaries) {
        return new SummarySource<>() {
            @Override
            public List<SessionSummary<S>> sessions() {
                return List.copyOf(summaries);
            }

            @Override
            public String hash() {
                return "sha256:" + summaries.size();
            }
        };
    }
}
