package org.tableweather.cluster;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.apache.spark.api.java.JavaSparkContext;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.plugin.PluginFailure;
import org.tableweather.analyzers.host.plugin.PluginJar;
import org.tableweather.analyzers.host.plugin.PluginRefused;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.release.ReleaseFolder;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The program that runs beside the command, or is handed to {@code spark-submit}: prints the same JSON as every host. */
@Command(
        name = "tableweather-cluster",
        mixinStandardHelpOptions = true,
        description =
                "Answers a question over a release, its sessions summarised on an Apache Spark cluster; prints JSON.")
public final class ClusterCommand implements Callable<Integer> {
    @Parameters(paramLabel = "ID", description = "Which analyzer.")
    private String id;

    @Option(names = "--spark", paramLabel = "URL", description = "The cluster: spark://HOST:PORT, or local[2].")
    private String spark = "";

    @Option(
            names = "--data",
            required = true,
            paramLabel = "FOLDER",
            description = "A release; every worker must see it under this path.")
    private Path data;

    @Option(names = "--set", paramLabel = "NAME=VALUE", description = "Set a parameter of the analyzer.")
    private Map<String, String> parameters = new LinkedHashMap<>();

    @Option(names = "--plugin", paramLabel = "JAR", description = "Also offer the analyzers in this jar.")
    private List<Path> plugins = List.of();

    @Option(names = "--spark-setting", paramLabel = "NAME=VALUE", description = "A setting of Spark itself.")
    private Map<String, String> settings = new LinkedHashMap<>();

    @Option(
            names = "--patience-seconds",
            defaultValue = "300",
            description = "How long to wait for a first executor; standard: ${DEFAULT-VALUE}.")
    private int patienceSeconds;

    @Option(
            names = "--repeat",
            defaultValue = "1",
            hidden = true,
            description = "Read all so many times, for benchmarks.")
    private int repeat;

    /** The program. */
    public static void main(String[] arguments) {
        int exitCode = new CommandLine(new ClusterCommand())
                .setExecutionExceptionHandler((thrown, command, parsed) -> told(thrown))
                .execute(arguments);
        System.out.flush();
        System.exit(exitCode);
    }

    private static int told(Exception thrown) {
        ClusterFailure failure = explained(thrown);
        System.err.println("tableweather-cluster: " + failure.getMessage());
        if (!failure.remedy().isEmpty()) {
            System.err.println("  remedy: " + failure.remedy());
        }
        return failure.exitCode();
    }

    private static ClusterFailure explained(Exception thrown) {
        if (thrown instanceof ClusterFailure failure) {
            return failure;
        }
        if (thrown instanceof PluginFailure) {
            return ClusterFailure.fault(thrown.getMessage(), "tell the jar's author");
        }
        if (thrown instanceof PluginRefused refused) {
            return ClusterFailure.usage(refused.getMessage(), refused.remedy());
        }
        if (thrown instanceof IOException && thrown.getMessage() != null) {
            return ClusterFailure.usage(thrown.getMessage(), "check the path");
        }
        thrown.printStackTrace();
        return ClusterFailure.fault("unexpected: " + thrown, "report what is printed above");
    }

    @Override
    public Integer call() throws Exception {
        Analyzer<?> analyzer = analyzer();
        ReleaseFolder release = ReleaseFolder.open(data);
        try (JavaSparkContext context = ClusterContext.open(spark, settings, patienceSeconds)) {
            AnalysisRun run = new ClusterAnalysis(release, plugins, parameters, repeat)
                    .run(context, analyzer, System.err::println);
            System.out.writeBytes(AnalysisJson.bytes(run));
        }
        return 0;
    }

    private Analyzer<?> analyzer() throws IOException, PluginRefused {
        List<Analyzer<?>> all = new ArrayList<>(AnalyzerCatalogue.discover().all());
        Set<String> names = new HashSet<>();
        for (Path jar : plugins) {
            if (!Files.isRegularFile(jar)) {
                throw ClusterFailure.usage("there is no " + jar, "check the path");
            }
            if (!names.add(jar.getFileName().toString())) {
                throw ClusterFailure.usage(
                        "two plugins are called " + jar.getFileName(), "give one of the files another name");
            }
            all.addAll(PluginJar.analyzers(jar));
        }
        return catalogue(all)
                .find(id)
                .orElseThrow(() ->
                        ClusterFailure.usage("there is no analyzer " + id, "tableweather analyze --list names them"));
    }

    private static AnalyzerCatalogue catalogue(List<Analyzer<?>> all) {
        try {
            return AnalyzerCatalogue.of(all);
        } catch (IllegalStateException twice) {
            throw ClusterFailure.usage(twice.getMessage(), "leave one of them out");
        }
    }
}
