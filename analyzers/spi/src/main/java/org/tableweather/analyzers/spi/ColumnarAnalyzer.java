package org.tableweather.analyzers.spi;

import java.util.Set;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * An analyzer that summarises a session from columns of numbers, without a record for every trial: many times faster where a host
 * reads them from Parquet. A host that has rows asks as it asks every {@link Analyzer}; the summary is the same to the last bit.
 *
 * @param <S> the summary of one session
 */
public interface ColumnarAnalyzer<S> extends Analyzer<S> {

    /** The numbers of a trial that it reads, beside its id, shot, kind and whether it was made. */
    Set<TrialNumber> numbers();

    /**
     * Summarises one session. Pure, as {@link Analyzer#summarise(SessionRecord, Iterable)}.
     *
     * @param session the session and what it refers to
     * @param trials all its trials, with at least the {@link #numbers()}
     * @return never null
     */
    S summarise(SessionRecord session, TrialColumns trials);

    @Override
    default S summarise(SessionRecord session, Iterable<Trial> trials) {
        return summarise(session, TrialColumns.of(trials, numbers()));
    }
}
