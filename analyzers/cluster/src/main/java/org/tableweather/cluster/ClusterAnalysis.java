package org.tableweather.cluster;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import org.apache.spark.api.java.JavaSparkContext;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.cluster.bench.RepeatedPartition;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseFolder;

/**
 * One analysis on a cluster.
 *
 * @param release to read
 * @param plugins shipped to the executors
 * @param parameters that are set, by name
 * @param repeat how many times all is read; more than once for benchmarks alone
 */
record ClusterAnalysis(ReleaseFolder release, List<Path> plugins, Map<String, String> parameters, int repeat) {
    private static final double NANOS = 1e9;

    /**
     * Makes it.
     *
     * @param spark the cluster
     * @param analyzer whose question
     * @param talk told what was read, and how long it took
     * @throws ClusterFailure when data are refused, the analyzer fails, or the cluster gives up
     */
    <S> AnalysisRun run(JavaSparkContext spark, Analyzer<S> analyzer, Consumer<String> talk) {
        plugins.forEach(jar -> spark.addFile(jar.toAbsolutePath().toString()));
        List<SessionPartition> partitions = RepeatedPartition.times(repeat, GroupPartition.of(release));
        spark.sc().addSparkListener(new Progress(partitions.size(), talk));
        ClusterSummaries<S> summaries =
                ClusterSummaries.read(spark, partitions, analyzer, ShippedAnalyzer.of(analyzer, plugins));
        if (repeat == 1) {
            mustBeAll(summaries.source().hash());
        }
        long start = System.nanoTime();
        AnalysisRun run = concluded(analyzer, summaries);
        talk.accept(String.format(
                Locale.ROOT,
                "summarised %,d attempts of %,d sessions from %,d room groups in %.2f s, %,d bytes of summaries;"
                        + " concluded in %.2f s",
                summaries.trials(),
                summaries.source().sessions().size(),
                partitions.size(),
                summaries.seconds(),
                summaries.jsonBytes(),
                (System.nanoTime() - start) / NANOS));
        return run;
    }

    private <S> AnalysisRun concluded(Analyzer<S> analyzer, ClusterSummaries<S> summaries) {
        try {
            return AnalysisRun.conclude(analyzer, summaries.source(), parameters);
        } catch (IllegalArgumentException e) {
            throw ClusterFailure.usage(e.getMessage(), "tableweather analyze --list shows the parameters");
        }
    }

    private void mustBeAll(String hash) {
        String stated = release.manifest().datasetHash();
        if (!stated.equals(hash)) {
            throw ClusterFailure.refused(
                    Manifest.FILE + " of " + release.path() + ": the sessions that were read have the hash " + hash
                            + " instead of " + stated + ": fetch the release anew");
        }
    }
}
