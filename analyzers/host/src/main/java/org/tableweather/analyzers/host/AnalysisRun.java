package org.tableweather.analyzers.host;

import java.util.Locale;
import java.util.Map;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;

/**
 * One analysis and what went into it.
 *
 * @param info the analyzer
 * @param dataset counts and hash of the sessions
 * @param analysis the answer
 */
public record AnalysisRun(AnalyzerInfo info, Dataset dataset, Analysis analysis) {

    /**
     * What an analysis was made from.
     *
     * @param trials attempts in the sessions
     * @param sessions how many
     * @param rooms how many
     * @param invented whether any session is made up for demonstration
     * @param hash names the exact set of sessions
     */
    public record Dataset(long trials, long sessions, long rooms, boolean invented, String hash) {

        /** Counts in words: {@code 12 rooms, 60 sessions, 1,200 attempts}. */
        public String inWords() {
            return counted(rooms, "room") + ", " + counted(sessions, "session") + ", " + counted(trials, "attempt");
        }

        private static String counted(long count, String what) {
            return String.format(Locale.ROOT, "%,d %s%s", count, what, count == 1 ? "" : "s");
        }

        static Dataset of(SummarySource<?> source) {
            long trials = 0;
            boolean invented = false;
            for (SummarySource.SessionSummary<?> session : source.sessions()) {
                trials += session.trials();
                invented |= session.invented();
            }
            long rooms = source.sessions().stream()
                    .map(SummarySource.SessionSummary::roomKey)
                    .distinct()
                    .count();
            return new Dataset(trials, source.sessions().size(), rooms, invented, source.hash());
        }
    }

    /**
     * Concludes.
     *
     * @param analyzer whose summaries
     * @param source the summaries
     * @param set parameter values by name
     * @throws IllegalArgumentException for a parameter that the analyzer does not know or allow
     */
    public static <S> AnalysisRun conclude(Analyzer<S> analyzer, SummarySource<S> source, Map<String, String> set) {
        return conclude(analyzer, source, set, ConclusionListener.NONE);
    }

    /**
     * Concludes, and tells how far that is.
     *
     * @param listener hears of progress; what it throws ends the conclusion
     */
    public static <S> AnalysisRun conclude(
            Analyzer<S> analyzer, SummarySource<S> source, Map<String, String> set, ConclusionListener listener) {
        AnalyzerInfo info = analyzer.info();
        Analysis analysis = analyzer.conclude(source, Parameters.of(info, set), listener);
        return new AnalysisRun(info, Dataset.of(source), analysis);
    }
}
