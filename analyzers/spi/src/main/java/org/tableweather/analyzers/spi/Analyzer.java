package org.tableweather.analyzers.spi;

import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Answers one question about pooled trials: map every session, then conclude.
 *
 * <p>Implementations are found by {@link java.util.ServiceLoader}, need a public no-argument constructor, hold no state,
 * and use neither clock, chance, files nor network: same input, same output.
 *
 * @param <S> the summary of one session, a record that Jackson can write and read back
 */
public interface Analyzer<S> {

    /** Id, version, question, parameters, needed columns, references. */
    AnalyzerInfo info();

    /** The class of a summary; the host stores summaries as JSON and reads them back. */
    Class<S> summaryType();

    /**
     * Summarises one session. Pure: an accepted session never changes, so the host keeps the summary as long as
     * {@link AnalyzerInfo#summaryVersion()} stays the same.
     *
     * @param session the session and what it refers to
     * @param trials all its trials in {@link Trial#CANONICAL_ORDER}
     * @return never null
     */
    S summarise(SessionRecord session, Iterable<Trial> trials);

    /**
     * Concludes over the summaries of many sessions. Pure.
     *
     * @param summaries in the order of their session keys
     * @param parameters checked against {@link AnalyzerInfo#parameters()}
     * @return an estimate, or declined with the reason; never an exception for poor data
     */
    Analysis conclude(SummarySource<S> summaries, Parameters parameters);

    /**
     * The same conclusion, telling how far it is. A host asks this way; an analyzer whose conclusions take long overrides it,
     * tells now and then, and can then be stopped. Others leave it as it is.
     *
     * @param summaries in the order of their session keys
     * @param parameters checked against {@link AnalyzerInfo#parameters()}
     * @param listener hears of progress; what it throws is let through
     * @return what {@link #conclude(SummarySource, Parameters)} returns
     */
    default Analysis conclude(SummarySource<S> summaries, Parameters parameters, ConclusionListener listener) {
        return conclude(summaries, parameters);
    }
}
