package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.ReleasedTrials;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather compare}. */
@Command(
        name = "compare",
        description = "Sets one room beside the pool: how it departs from the average room, and its place among all.",
        footer = {
            "",
            "With --data alone the pool is these folders; with a server alone it is what the server holds;",
            "with both, your room's folder is set beside the server's pool, and nothing is uploaded.",
            "--release sets it beside a release on this machine, and asks nobody.",
            "",
            "Examples:",
            "  tableweather compare elm --server http://127.0.0.1:8080",
            "  tableweather compare --data my-hall --server http://127.0.0.1:8080",
            "  tableweather compare --data my-hall --release release-3/"
        })
final class CompareCommand extends Subcommand {
    @Parameters(
            arity = "0..1",
            paramLabel = "ROOM",
            description = "Room key or id; not needed when --data holds one room.")
    private String room;

    @Option(
            names = "--analyzer",
            paramLabel = "ID",
            defaultValue = "rebound-humidity",
            description = "Which analyzer; standard: ${DEFAULT-VALUE}.")
    private String id;

    @Option(
            names = "--release",
            paramLabel = "FOLDER",
            description = "A release, or a partition of one, as the pool; --data is your room, and stays here.")
    private Path release;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private DataOrServer where;

    @Override
    public Integer call() throws Exception {
        mustFit();
        RoomComparison comparison = where.data().isEmpty() && release == null
                ? RoomComparison.of(where.run(id, this), Optional.ofNullable(room))
                : ofFolders(where.analyzers().find(id));
        print(json ? JsonText.of(comparison) : RoomComparisonText.of(comparison));
        return ExitCodes.DONE;
    }

    private void mustFit() throws IOException {
        if (release == null) {
            return;
        }
        if (where.server().isTyped()) {
            throw Failure.usage("--release and --server name two pools", "give one of them");
        }
        if (ReleasedTrials.at(release).isEmpty()) {
            throw Failure.usage(
                    release + " is no release: it holds no manifest.json",
                    "name the folder of a release; for contribution folders give them all to --data");
        }
    }

    private <S> RoomComparison ofFolders(Analyzer<S> analyzer) throws IOException {
        LocalSummaries<S> local = LocalData.summaries(analyzer, where.data(), this);
        Optional<String> only = onlyRoom(local);
        if (release != null) {
            local = local.with(
                    LocalData.summaries(analyzer, List.of(release), this).summaries());
        }
        List<SessionSummary<S>> all = new ArrayList<>(local.summaries());
        if (release == null && where.server().isStated()) {
            addPool(all, analyzer);
        } else if (release == null && only.isPresent()) {
            throw Failure.usage(
                    "the data hold one room alone, " + only.get() + ": there is no pool to compare it with",
                    "add --server URL, --release FOLDER, or the folders of other rooms");
        }
        AnalysisRun run = where.conclude(analyzer, Summaries.of(all));
        return RoomComparison.of(run, Optional.ofNullable(room).or(() -> only));
    }

    // a session that was contributed already is the same session: it counts once
    private <S> void addPool(List<SessionSummary<S>> all, Analyzer<S> analyzer) throws IOException {
        Set<String> known = new HashSet<>();
        all.forEach(summary -> known.add(summary.digest()));
        for (SessionSummary<S> summary : ServerSummaries.fetch(where.server().client(), analyzer)) {
            if (known.add(summary.digest())) {
                all.add(summary);
            }
        }
    }

    private static Optional<String> onlyRoom(LocalSummaries<?> local) {
        List<String> rooms = local.summaries().stream()
                .map(SessionSummary::roomKey)
                .distinct()
                .toList();
        return rooms.size() == 1 ? Optional.of(rooms.get(0)) : Optional.empty();
    }
}
