package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.tableweather.release.DataRefused;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.Tombstone;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code tableweather release build}. */
@Command(
        name = "build",
        description = "Freezes contribution folders or archives on this machine into a release; no server.",
        footer = {
            "",
            "The same contributions, number, title, date and release before give the same bytes, in whatever",
            "order they are named. Rooms are placed to 0.1 degrees only.",
            "",
            "Example:",
            "  tableweather release build --data cellar --data club.zip --number 1 --date 2026-02-01 --to release-1"
        })
final class ReleaseBuildCommand extends Subcommand {
    @Option(
            names = "--data",
            required = true,
            arity = "1..*",
            paramLabel = "PATH",
            description = "Contribution folder or .zip archive; again for more.")
    private List<Path> paths = List.of();

    @Option(names = "--number", required = true, paramLabel = "N", description = "Number of the release, from 1.")
    private int number;

    @Option(
            names = "--date",
            required = true,
            paramLabel = "DATE",
            description = "Date of the release: 2026-02-01. Never taken from the clock.")
    private LocalDate date;

    @Option(
            names = "--title",
            paramLabel = "TEXT",
            defaultValue = "Tableweather",
            description = "What is released, in words; standard ${DEFAULT-VALUE}.")
    private String title;

    @Option(names = "--to", required = true, paramLabel = "FOLDER", description = "New folder for the release.")
    private Path target;

    @Option(
            names = "--previous",
            paramLabel = "FOLDER",
            description = "The release before: changes are told against it, tombstones carried on.")
    private Optional<Path> previous = Optional.empty();

    @Option(
            names = "--withdrawn",
            paramLabel = "ID=REASON",
            description = "Why a contribution of the release before is not in this one; again for more.")
    private Map<String, String> withdrawn = new LinkedHashMap<>();

    @Option(names = "--json", description = "Print the manifest.")
    private boolean json;

    @Override
    public Integer call() throws Exception {
        for (Path path : paths) {
            LocalData.mustExist(path);
        }
        Path parent = target.toAbsolutePath().normalize().getParent();
        if (parent == null || !Files.isDirectory(parent)) {
            throw Failure.usage("there is no folder " + parent + " for the release", "make it, or name another path");
        }
        Optional<ReleaseFolder> before = Optional.empty();
        if (previous.isPresent()) {
            before = Optional.of(ReleaseFolder.open(previous.get()));
        }
        Manifest manifest = built(facts(before));
        print(json ? JsonText.ofSchema(manifest) : text(manifest));
        return ExitCodes.DONE;
    }

    private ReleaseFacts facts(Optional<ReleaseFolder> before) throws IOException {
        List<Tombstone> tombstones = new ArrayList<>();
        if (before.isPresent()) {
            tombstones.addAll(before.get().tombstones());
        }
        Set<String> known = before.stream()
                .flatMap(release -> release.manifest().contributions().stream())
                .map(Manifest.Member::id)
                .collect(Collectors.toSet());
        for (Map.Entry<String, String> entry : withdrawn.entrySet()) {
            if (!known.contains(entry.getKey())) {
                throw Failure.usage(
                        "--withdrawn " + entry.getKey() + ": the release before has no such contribution",
                        "give the whole id from its manifest.json, and --previous");
            }
            tombstones.add(new Tombstone(entry.getKey(), date, entry.getValue()));
        }
        try {
            return new ReleaseFacts(number, title, date, before.map(ReleaseFolder::manifest), tombstones);
        } catch (IllegalArgumentException e) {
            throw Failure.usage(e.getMessage(), "").because(e);
        }
    }

    private Manifest built(ReleaseFacts facts) throws IOException {
        try (ProgressLine progress =
                ProgressLine.ofBytes(Terminal.current(), "reading", LocalData.bytesOfTrials(paths))) {
            return ReleaseBuilder.build(ReleaseInput.ofFolders(paths, progress), facts, target);
        } catch (DataRefused e) {
            say(FindingText.refusals(e.report()));
            throw Failure.refused(e.getMessage(), "").because(e);
        }
    }

    private String text(Manifest manifest) {
        Manifest.Totals totals = manifest.totals();
        Manifest.ChangeCounts changes = manifest.changes();
        return String.format(
                Locale.ROOT,
                "%s: release %d, %,d trials in %,d sessions of %,d rooms from %,d contributions%n"
                        + "  %d added, %d withdrawn, %d unchanged; %,d files, %.1f MB%n  manifest sha256:%s%n",
                target,
                manifest.number(),
                totals.trials(),
                totals.sessions(),
                totals.rooms(),
                totals.contributions(),
                changes.added(),
                changes.withdrawn(),
                changes.unchanged(),
                manifest.files().size() + 2,
                manifest.files().stream().mapToLong(Manifest.FileEntry::bytes).sum() / 1e6,
                manifest.hash());
    }
}
