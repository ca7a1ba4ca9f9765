package org.tableweather.cluster;

import java.io.IOException;
import java.util.ArrayList;
import org.apache.spark.api.java.function.Function;
import org.tableweather.analyzers.host.plugin.PluginFailure;
import org.tableweather.analyzers.spi.Analyzer;

/**
 * The task: reads a partition and keeps one summary a session. What would fail again anywhere comes back as an outcome; what
 * another executor may manage is thrown, so that Spark tries again.
 */
final class SummarisePartition implements Function<SessionPartition, PartitionOutcome> {
    private static final long serialVersionUID = 1L;

    private final ShippedAnalyzer shipped;

    SummarisePartition(ShippedAnalyzer shipped) {
        this.shipped = shipped;
    }

    @Override
    public PartitionOutcome call(SessionPartition partition) throws IOException {
        try {
            return PartitionOutcome.of(summarised(partition, shipped.find()));
        } catch (PartitionRefused refused) {
            return PartitionOutcome.refused(refused.getMessage());
        } catch (PluginFailure failure) {
            return PartitionOutcome.failed(partition.name() + ": " + failure.getMessage());
        } catch (RuntimeException | LinkageError | StackOverflowError thrown) {
            return PartitionOutcome.failed(
                    partition.name() + ": the analyzer " + shipped.id() + " threw in summarise: " + thrown);
        }
    }

    private static <S> ArrayList<SummarisedSession> summarised(SessionPartition partition, Analyzer<S> analyzer)
            throws IOException, PartitionRefused {
        ArrayList<SummarisedSession> sessions = new ArrayList<>();
        partition.summarise(analyzer, summary -> sessions.add(SummarisedSession.of(summary)));
        return sessions;
    }
}
