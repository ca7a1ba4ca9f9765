package org.tableweather.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Option;

/** Which cluster, if any. */
final class SparkOptions {
    @Option(
            names = "--spark",
            paramLabel = "URL",
            description = "Have the sessions of one release (--data) summarised on this Apache Spark cluster:"
                    + " spark://HOST:PORT, or local[2] for this machine; the first time Spark is fetched, some 220 MB.")
    private String url;

    @Option(
            names = "--spark-setting",
            paramLabel = "NAME=VALUE",
            description = "A setting of Spark itself, such as spark.executor.memory=2g; more than one may be given.")
    private Map<String, String> settings = new LinkedHashMap<>();

    /**
     * Whether the command line names a cluster.
     *
     * @throws Failure when there are settings without a cluster
     */
    boolean isTyped() {
        if (url == null && !settings.isEmpty()) {
            throw Failure.usage("--spark-setting without --spark", "name the cluster: --spark spark://HOST:7077");
        }
        return url != null;
    }

    /** The arguments for the program that runs there. */
    void addTo(List<String> arguments) {
        arguments.add("--spark");
        arguments.add(url);
        settings.forEach((name, value) -> {
            arguments.add("--spark-setting");
            arguments.add(name + "=" + value);
        });
    }
}
