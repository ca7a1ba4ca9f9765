package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where an analysis is made: here over folders, or by a server over what it holds. */
final class DataOrServer {
    @Option(
            names = "--data",
            arity = "1..*",
            paramLabel = "PATH",
            description =
                    "On this machine: contribution folders, .zip archives, releases or partitions of them, Parquet files"
                            + " of trials.")
    private List<Path> data = List.of();

    @Option(
            names = "--set",
            paramLabel = "NAME=VALUE",
            description = "Set a parameter of the analyzer; analyze --list names them.")
    private Map<String, String> parameters = new LinkedHashMap<>();

    @Mixin
    private ServerOptions server;

    @Mixin
    private AnalyzerChoice analyzers;

    /**
     * Makes the analysis.
     *
     * @param id of the analyzer
     * @param command to talk through
     */
    AnalysisRun run(String id, Subcommand command) throws IOException {
        mustBeOne();
        return data.isEmpty() ? server.client().analysis(id, parameters) : local(analyzers.find(id), command);
    }

    /** The analysis as JSON; from a server its very bytes. */
    byte[] json(String id, Subcommand command) throws IOException {
        mustBeOne();
        return data.isEmpty()
                ? server.client().analysisJson(id, parameters)
                : AnalysisJson.bytes(local(analyzers.find(id), command));
    }

    /** Has the server make the analysis, or find it, and keep it. */
    ServerRun keep(String id) throws IOException {
        if (!data.isEmpty()) {
            throw Failure.usage("--keep is for a server, --data is here", "give --server URL instead of --data");
        }
        return ServerRun.ask(server.client(), id, parameters).mustBeMade();
    }

    /**
     * The analysis of a release, made on a cluster, as JSON.
     *
     * @throws Failure when the data are no release, or the cluster refuses
     */
    byte[] json(String id, SparkOptions spark, Subcommand command) throws IOException {
        mustBeOne();
        return SparkRun.json(
                SparkRun.arguments(analyzers.find(id).info().id(), spark, data, parameters, analyzers.plugins()),
                command::say);
    }

    private void mustBeOne() {
        if (!data.isEmpty() && server.isTyped()) {
            throw Failure.usage(
                    "--data and --server name two pools",
                    "give one of them; tableweather compare sets folders beside a server's pool");
        }
    }

    private <S> AnalysisRun local(Analyzer<S> analyzer, Subcommand command) throws IOException {
        return conclude(analyzer, LocalData.summaries(analyzer, data, command).source());
    }

    /** Concludes here, with the parameters that were set. */
    <S> AnalysisRun conclude(Analyzer<S> analyzer, Summaries<S> summaries) {
        try (ConclusionLine line = new ConclusionLine(Terminal.current())) {
            return AnalysisRun.conclude(analyzer, summaries, parameters, line);
        } catch (IllegalArgumentException e) {
            throw Failure.usage(e.getMessage(), "tableweather analyze --list shows the parameters")
                    .because(e);
        }
    }

    AnalyzerChoice analyzers() {
        return analyzers;
    }

    List<Path> data() {
        return data;
    }

    Map<String, String> parameters() {
        return parameters;
    }

    ServerOptions server() {
        return server;
    }
}
