package org.tableweather.cluster;

import java.util.ArrayList;
import java.util.List;
import org.apache.spark.api.java.JavaSparkContext;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/**
 * The summaries that executors made, in the driver.
 *
 * @param source ready to conclude over
 * @param trials attempts in the sessions
 * @param jsonBytes that came over the network
 * @param seconds that it took
 */
public record ClusterSummaries<S>(Summaries<S> source, long trials, long jsonBytes, double seconds) {
    private static final double NANOS = 1e9;

    /**
     * Has the executors read and summarise: one task a partition.
     *
     * @param spark the cluster
     * @param partitions what to read
     * @param analyzer whose summaries
     * @param shipped how executors find it
     * @throws ClusterFailure when data are refused, the analyzer fails, or the cluster gives up
     */
    static <S> ClusterSummaries<S> read(
            JavaSparkContext spark, List<SessionPartition> partitions, Analyzer<S> analyzer, ShippedAnalyzer shipped) {
        long start = System.nanoTime();
        List<SessionSummary<S>> summaries = new ArrayList<>();
        long trials = 0;
        long bytes = 0;
        for (PartitionOutcome outcome : outcomes(spark, partitions, shipped)) {
            mustBeSound(outcome);
            for (SummarisedSession session : outcome.sessions()) {
                summaries.add(session.summary(analyzer.summaryType()));
                trials += session.trials();
                bytes += session.json().length;
            }
        }
        return new ClusterSummaries<>(Summaries.of(summaries), trials, bytes, (System.nanoTime() - start) / NANOS);
    }

    private static List<PartitionOutcome> outcomes(
            JavaSparkContext spark, List<SessionPartition> partitions, ShippedAnalyzer shipped) {
        try {
            return spark.parallelize(partitions, partitions.size())
                    .map(new SummarisePartition(shipped))
                    .collect();
        } catch (Exception thrown) {
            // Spark throws checked exceptions that it does not declare
            throw ClusterFailure.ofSpark(thrown);
        }
    }

    private static void mustBeSound(PartitionOutcome outcome) {
        if (!outcome.refusal().isEmpty()) {
            throw ClusterFailure.refused(outcome.refusal());
        }
        if (!outcome.fault().isEmpty()) {
            throw ClusterFailure.fault(outcome.fault(), "tell the author of the analyzer");
        }
    }
}
