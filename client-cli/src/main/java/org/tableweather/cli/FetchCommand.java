package org.tableweather.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.tableweather.release.Manifest;
import org.tableweather.schema.record.Kind;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather fetch}. */
@Command(
        name = "fetch",
        description = "Brings a release here and verifies every file; goes on where it stopped.",
        footer = {
            "",
            "Files that are here already and sound are not fetched again. With --kind or --room-group only that",
            "part is brought, with the readings and marked points of these rooms, of all kinds; the same command",
            "without them completes it.",
            "",
            "Example:",
            "  tableweather fetch 3 --server https://example.org --to release-3"
        })
final class FetchCommand extends Subcommand {
    @Parameters(paramLabel = "NUMBER", description = "Number of the release; release list tells them.")
    private int number;

    @Option(names = "--to", paramLabel = "FOLDER", description = "Where to; standard: release-NUMBER.")
    private Optional<Path> target = Optional.empty();

    @Option(names = "--kind", paramLabel = "KIND", description = "Only trials of this kind; again for more.")
    private List<String> kinds = List.of();

    @Option(names = "--room-group", paramLabel = "GROUP", description = "Only this group of rooms; again for more.")
    private List<String> groups = List.of();

    @Option(
            names = "--silence-seconds",
            paramLabel = "N",
            defaultValue = "60",
            description =
                    "A line on which nothing comes for so long is cut and taken up again; standard: ${DEFAULT-VALUE}.")
    private int silenceSeconds;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Mixin
    private ServerOptions server;

    /**
     * What is here now.
     *
     * @param folder of the release
     * @param number of the release
     * @param files here
     * @param bytes of them
     * @param complete whether nothing of the release is missing
     * @param manifestSha256 identifies the release
     */
    record Fetched(String folder, int number, int files, long bytes, boolean complete, String manifestSha256) {}

    @Override
    public Integer call() throws Exception {
        kinds.forEach(FetchCommand::mustBeKind);
        Path folder = target.orElse(Path.of("release-" + number));
        ReleaseFetch release = ReleaseFetch.of(server.client(), number, Duration.ofSeconds(silenceSeconds));
        Manifest manifest = release.manifest();
        List<Manifest.FileEntry> wanted =
                manifest.files().stream().filter(this::isWanted).toList();
        mustBeSome(manifest, wanted);
        release.bring(folder, wanted);
        Fetched fetched = new Fetched(
                folder.toString(),
                number,
                wanted.size() + 2,
                wanted.stream().mapToLong(Manifest.FileEntry::bytes).sum(),
                wanted.size() == manifest.files().size(),
                manifest.hash());
        print(json ? JsonText.of(fetched) : text(fetched, manifest));
        return ExitCodes.DONE;
    }

    private static void mustBeKind(String kind) {
        if (Kind.of(kind).isEmpty()) {
            throw Failure.usage(
                    "there is no kind " + kind,
                    "choose one of: "
                            + Arrays.stream(Kind.values()).map(Kind::schemaName).collect(Collectors.joining(", ")));
        }
    }

    private boolean isWanted(Manifest.FileEntry file) {
        String path = file.path();
        boolean ofKind = kinds.isEmpty()
                || !path.startsWith("trials/")
                || kinds.stream().anyMatch(kind -> path.contains("/kind=" + kind + "/"));
        boolean ofGroup = groups.isEmpty()
                || !path.contains("/room_group=")
                || groups.stream().anyMatch(group -> path.contains("/room_group=" + group + "/"));
        return ofKind && ofGroup;
    }

    private void mustBeSome(Manifest manifest, List<Manifest.FileEntry> wanted) {
        if (wanted.stream().noneMatch(file -> file.path().startsWith("trials/"))) {
            throw Failure.usage(
                    "release " + number + " has no trials of this kind and room group",
                    "it has: "
                            + manifest.files().stream()
                                    .map(Manifest.FileEntry::path)
                                    .filter(path -> path.startsWith("trials/"))
                                    .limit(20)
                                    .collect(Collectors.joining(", ")));
        }
    }

    private String text(Fetched fetched, Manifest manifest) {
        return String.format(
                Locale.ROOT,
                "%s: release %d, %s%s; %,d files, %.1f MB, every one verified%n  manifest sha256:%s%n",
                fetched.folder(),
                number,
                manifest.title(),
                fetched.complete() ? "" : " (a part of it)",
                fetched.files(),
                fetched.bytes() / 1e6,
                fetched.manifestSha256());
    }
}
