package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.Manifest;
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
            "--release FOLDER sets it beside a release on this machine, and asks nobody; --release NUMBER with a",
            "server beside that release, which is brought here for this once, verified, and computed with here:",
            "nothing of yours is sent. To ask more often, fetch it first and name its folder.",
            "",
            "Examples:",
            "  tableweather compare elm --server http://127.0.0.1:8080",
            "  tableweather compare --data my-hall --server http://127.0.0.1:8080",
            "  tableweather compare --data my-hall --release release-3/",
            "  tableweather compare --data my-hall --release 3 --server http://127.0.0.1:8080"
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
            paramLabel = "FOLDER|NUMBER",
            description = "As the pool: a release here, or a partition of one; or a number, the server's release of"
                    + " this number. --data is your room, and stays here.")
    private String release;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private DataOrServer where;

    @Override
    public Integer call() throws Exception {
        RoomComparison comparison = release == null ? besidePool() : besideRelease();
        print(json ? JsonText.of(comparison) : RoomComparisonText.of(comparison));
        return ExitCodes.DONE;
    }

    private RoomComparison besidePool() throws IOException {
        return where.data().isEmpty()
                ? RoomComparison.of(where.run(id, this), Optional.ofNullable(room))
                : ofFolders(where.analyzers().find(id), Optional.empty());
    }

    private RoomComparison besideRelease() throws IOException {
        Path here = Path.of(release);
        if (!isNumber() || !where.server().isTyped() && Files.exists(here)) {
            return ofFolders(where.analyzers().find(id), Optional.of(released(here)));
        }
        if (!where.server().isStated()) {
            throw Failure.usage(
                    "there is no folder " + release + " here, and no server to ask for release " + release,
                    "add --server URL, or name the folder of a release");
        }
        Path fetched = Files.createTempDirectory("tableweather-release-");
        try {
            fetch(fetched);
            return ofFolders(where.analyzers().find(id), Optional.of(fetched));
        } finally {
            delete(fetched);
        }
    }

    private boolean isNumber() {
        return release.matches("[0-9]{1,9}");
    }

    private Path released(Path folder) throws IOException {
        if (where.server().isTyped()) {
            throw Failure.usage(
                    "--release " + release + " and --server name two pools",
                    "give one of them; with a server --release takes the number of one of its releases: release list");
        }
        if (ReleasedTrials.at(folder).isEmpty()) {
            throw Failure.usage(
                    release + " is no release: it holds no manifest.json",
                    "name the folder of a release; for contribution folders give them all to --data");
        }
        return folder;
    }

    /** What an analysis reads of a release: trials and sessions. */
    private void fetch(Path folder) throws IOException {
        ReleaseFetch fetch = ReleaseFetch.of(where.server().client(), Integer.parseInt(release), ReleaseFetch.SILENCE);
        List<Manifest.FileEntry> wanted = fetch.manifest().files().stream()
                .filter(Manifest.FileEntry::feedsAnalysis)
                .toList();
        fetch.bring(folder, wanted);
        say("release " + release + ", manifest sha256:" + fetch.manifest().hash() + ": brought here and verified");
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    private <S> RoomComparison ofFolders(Analyzer<S> analyzer, Optional<Path> released) throws IOException {
        LocalSummaries<S> local = LocalData.summaries(analyzer, where.data(), this);
        Optional<String> only = onlyRoom(local);
        if (released.isPresent()) {
            local = local.with(
                    LocalData.summaries(analyzer, List.of(released.get()), this).summaries());
        }
        List<SessionSummary<S>> all = new ArrayList<>(local.summaries());
        if (released.isEmpty() && where.server().isStated()) {
            addPool(all, analyzer);
        } else if (released.isEmpty() && only.isPresent()) {
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
