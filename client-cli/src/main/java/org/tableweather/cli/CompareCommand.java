package org.tableweather.cli;

import java.io.IOException;
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
            "",
            "Examples:",
            "  tableweather compare elm --server http://127.0.0.1:8080",
            "  tableweather compare --data my-hall --server http://127.0.0.1:8080"
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

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private DataOrServer where;

    @Override
    public Integer call() throws Exception {
        RoomComparison comparison = where.data().isEmpty()
                ? RoomComparison.of(where.run(id, this), Optional.ofNullable(room))
                : ofFolders(where.analyzers().find(id));
        print(json ? JsonText.of(comparison) : RoomComparisonText.of(comparison));
        return ExitCodes.DONE;
    }

    private <S> RoomComparison ofFolders(Analyzer<S> analyzer) throws IOException {
        LocalSummaries<S> local = LocalData.summaries(analyzer, where.data(), this);
        List<SessionSummary<S>> all = new ArrayList<>(local.summaries());
        Optional<String> only = onlyRoom(local);
        if (where.server().isStated()) {
            addPool(all, analyzer);
        } else if (only.isPresent()) {
            throw Failure.usage(
                    "the data hold one room alone, " + only.get() + ": there is no pool to compare it with",
                    "add --server URL, or the folders of other rooms");
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
