package org.tableweather.cluster;

import java.io.IOException;
import java.io.Serializable;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.spark.SparkFiles;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.plugin.PluginJar;
import org.tableweather.analyzers.host.plugin.PluginRefused;
import org.tableweather.analyzers.spi.Analyzer;

/**
 * Which analyzer the executors ask; they find it again by name, in our jars or in a plugin that was shipped to them.
 *
 * @param id of the analyzer
 * @param version that the driver has
 * @param plugins file names of the shipped jars
 */
record ShippedAnalyzer(String id, String version, ArrayList<String> plugins) implements Serializable {
    /** What the last task of this process found: looking through all jars for every task takes longer than a small one. */
    private static volatile Optional<Found> latest = Optional.empty();

    /** An analyzer, and what was asked for: by whom, and from which application's files. */
    private record Found(ShippedAnalyzer asked, String files, Analyzer<?> analyzer) {}

    static ShippedAnalyzer of(Analyzer<?> analyzer, List<Path> plugins) {
        List<String> names =
                plugins.stream().map(jar -> jar.getFileName().toString()).toList();
        return new ShippedAnalyzer(analyzer.info().id(), analyzer.info().version(), new ArrayList<>(names));
    }

    /**
     * The same analyzer, in an executor.
     *
     * @throws PartitionRefused when the executor has another version of it, or none
     */
    Analyzer<?> find() throws IOException, PartitionRefused {
        String files = SparkFiles.getRootDirectory();
        Optional<Found> known = latest.filter(
                found -> found.asked().equals(this) && found.files().equals(files));
        if (known.isPresent()) {
            return known.get().analyzer();
        }
        Analyzer<?> analyzer = search();
        latest = Optional.of(new Found(this, files, analyzer));
        return analyzer;
    }

    private Analyzer<?> search() throws IOException, PartitionRefused {
        List<Analyzer<?>> all = new ArrayList<>(AnalyzerCatalogue.discover().all());
        try {
            for (String plugin : plugins) {
                all.addAll(PluginJar.analyzers(Path.of(SparkFiles.get(plugin))));
            }
        } catch (PluginRefused refused) {
            throw new PartitionRefused(refused.getMessage());
        }
        for (Analyzer<?> analyzer : all) {
            if (analyzer.info().id().equals(id) && analyzer.info().version().equals(version)) {
                return analyzer;
            }
        }
        throw new PartitionRefused("a worker has no analyzer " + id + " " + version
                + ": leave the jars of another version of this program out of its class path");
    }
}
