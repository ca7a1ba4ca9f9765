package org.tableweather.cluster;

import java.io.IOException;
import java.io.Serializable;
import java.util.function.Consumer;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** Sessions that one task reads, independent of all others. */
public interface SessionPartition extends Serializable {

    /** What it is called in messages. */
    String name();

    /**
     * Summarises every session, complete.
     *
     * @param analyzer whose summaries
     * @param sink takes one a session
     * @throws PartitionRefused when the data are not what they should be: reading them elsewhere would not help
     * @throws IOException when they cannot be read; another executor may do better
     */
    <S> void summarise(Analyzer<S> analyzer, Consumer<SessionSummary<S>> sink) throws IOException, PartitionRefused;
}
