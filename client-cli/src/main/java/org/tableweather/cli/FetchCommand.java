package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
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
            "part is brought; the same command without them completes it.",
            "",
            "Example:",
            "  tableweather fetch 3 --server https://example.org --to release-3"
        })
final class FetchCommand extends Subcommand {
    private static final int AT_ONCE = 4;

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
        ServerClient client = server.client();
        byte[] bytes = client.bytes(ReleaseDownload.path(number, Manifest.FILE), Map.of(), "*/*");
        Manifest manifest = manifest(client, bytes);
        mustFit(folder, manifest);
        List<Manifest.FileEntry> wanted =
                manifest.files().stream().filter(this::isWanted).toList();
        mustBeSome(manifest, wanted);
        bring(client, folder, wanted);
        // last: a folder with a manifest is a release
        Files.write(folder.resolve(Manifest.FILE), bytes);
        Files.writeString(
                folder.resolve(Manifest.HASH_FILE),
                manifest.hash() + "  " + Manifest.FILE + "\n",
                StandardCharsets.UTF_8);
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

    private Manifest manifest(ServerClient client, byte[] bytes) throws IOException {
        Manifest manifest = Manifest.read(bytes);
        JsonNode told = client.get("/api/v1/releases/" + number, Map.of());
        String should = told.path("manifestSha256").asText();
        if (manifest.number() != number || !manifest.hash().equals(should)) {
            throw Failure.refused(
                    Manifest.FILE + " of release " + number + " has the SHA-256 " + manifest.hash()
                            + ", the server's register says " + should,
                    "the copy on the server is damaged: tell its operator");
        }
        return manifest;
    }

    /** A folder that holds another release is left alone. */
    private void mustFit(Path folder, Manifest manifest) throws IOException {
        Path there = folder.resolve(Manifest.FILE);
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw Failure.usage(folder + " is a file", "name a folder with --to");
        }
        if (Files.isRegularFile(there)
                && !Manifest.read(Files.readAllBytes(there)).hash().equals(manifest.hash())) {
            throw Failure.usage(folder + " holds another release", "name another folder with --to");
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

    private void bring(ServerClient client, Path folder, List<Manifest.FileEntry> wanted) throws IOException {
        Files.createDirectories(folder);
        long total = wanted.stream().mapToLong(Manifest.FileEntry::bytes).sum();
        ExecutorService pool = Executors.newFixedThreadPool(AT_ONCE);
        try (ProgressLine progress = ProgressLine.ofBytes(Terminal.current(), "fetching", total)) {
            ReleaseDownload download = new ReleaseDownload(
                    client, number, folder, Duration.ofSeconds(silenceSeconds), new AtomicLong(), progress);
            List<Future<?>> files = new ArrayList<>();
            for (Manifest.FileEntry file : wanted) {
                files.add(pool.submit(() -> {
                    download.bring(file);
                    return null;
                }));
            }
            for (Future<?> file : files) {
                await(file);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    private static void await(Future<?> file) throws IOException {
        try {
            file.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Failure failure) {
                throw failure;
            }
            if (e.getCause() instanceof IOException io) {
                throw io;
            }
            throw new UncheckedIOException(new IOException(e.getCause()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Failure.fault("interrupted", "run it again: it goes on where it stopped")
                    .because(e);
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
