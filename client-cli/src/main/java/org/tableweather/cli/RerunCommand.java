package org.tableweather.cli;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.RunId;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather rerun}. */
@Command(
        name = "rerun",
        description =
                "Verifies a kept analysis: has the server make it again on the sessions that were recorded with it,"
                        + " makes it here too, and compares the bytes.",
        footer = {
            "",
            "Ends with 0 when all bytes are the same, with 1 when not. What an analysis is made here from",
            "are the server's summaries of the recorded sessions.",
            "",
            "Example:",
            "  tableweather rerun 3f0c...  --server http://127.0.0.1:8080"
        })
final class RerunCommand extends Subcommand {
    @Parameters(paramLabel = "ID", description = "Which run: 64 hex digits, as analyze --keep told them.")
    private String id;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private ServerOptions server;

    @Mixin
    private AnalyzerChoice analyzers;

    @Override
    public Integer call() throws Exception {
        if (!id.matches("[0-9a-f]{64}")) {
            throw Failure.usage(
                    "ID = " + id + " is not 64 hex digits (0-9, a-f)",
                    "give the whole name that tableweather analyze --keep told");
        }
        ServerClient client = server.client();
        ServerRun run = ServerRun.again(client, id).mustBeMade();
        mustBearItsName(run);
        byte[] kept = run.result();
        Rerun rerun = new Rerun(run, kept, local(run, client));
        print(json ? JsonText.of(rerun.verdict()) : rerun.text());
        return rerun.verdict().verified() ? ExitCodes.DONE : ExitCodes.FAULT;
    }

    private void mustBearItsName(ServerRun run) {
        String named = RunId.of(run.analyzer(), run.version(), run.parameters(), run.datasetHash());
        if (!named.equals(id)) {
            throw Failure.fault(
                    "run " + id + " does not bear the name of its inputs, which is " + named,
                    "the server's record was changed: do not trust its result");
        }
    }

    private Rerun.Local local(ServerRun run, ServerClient client) throws IOException {
        Optional<Analyzer<?>> here = analyzers.catalogue().find(run.analyzer());
        if (here.isEmpty()) {
            return Rerun.Local.notMade(
                    "this program has no analyzer " + run.analyzer() + ": name its jar with --plugin");
        }
        String version = here.get().info().version();
        return version.equals(run.version())
                ? made(here.get(), run, client)
                : Rerun.Local.notMade("this program has " + run.analyzer() + " " + version + ", the run is of "
                        + run.version() + ": use the same release");
    }

    private static <S> Rerun.Local made(Analyzer<S> analyzer, ServerRun run, ServerClient client) throws IOException {
        List<SessionSummary<S>> sessions = ServerSummaries.ofRun(client, analyzer, run.id());
        Summaries<S> summaries = Summaries.of(sessions);
        if (!summaries.hash().equals(run.datasetHash())) {
            throw Failure.fault(
                    "the server's summaries are of the sessions " + summaries.hash() + ", the run is of "
                            + run.datasetHash(),
                    "the server's record was changed: do not trust its result");
        }
        try (ConclusionLine line = new ConclusionLine(Terminal.current())) {
            return Rerun.Local.made(
                    AnalysisJson.bytes(AnalysisRun.conclude(analyzer, summaries, run.parameters(), line)));
        }
    }
}
