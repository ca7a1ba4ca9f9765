package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import org.tableweather.release.Manifest;

/** A release on a server on its way here: its manifest, then its files, each verified. */
final class ReleaseFetch {
    /** A line on which nothing comes for so long is cut, unless told otherwise. */
    static final Duration SILENCE = Duration.ofSeconds(60);

    private static final int AT_ONCE = 4;

    private final ServerClient client;
    private final Duration silence;
    private final byte[] manifestBytes;
    private final Manifest manifest;

    private ReleaseFetch(ServerClient client, Duration silence, byte[] manifestBytes, Manifest manifest) {
        this.client = client;
        this.silence = silence;
        this.manifestBytes = manifestBytes;
        this.manifest = manifest;
    }

    /**
     * Asks for the manifest.
     *
     * @param number of the release
     * @param silence after which a line is cut and taken up again
     * @throws Failure when there is no such release, or its manifest is not what the server's register names
     */
    static ReleaseFetch of(ServerClient client, int number, Duration silence) throws IOException {
        byte[] bytes = client.bytes(ReleaseDownload.path(number, Manifest.FILE), Map.of(), "*/*");
        return new ReleaseFetch(client, silence, bytes, checked(client, number, bytes));
    }

    Manifest manifest() {
        return manifest;
    }

    private static Manifest checked(ServerClient client, int number, byte[] bytes) throws IOException {
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

    /**
     * Brings these files into a folder; those that are there already and sound are not asked for.
     *
     * @throws Failure when the folder holds another release, or what comes is not what was released
     */
    void bring(Path folder, List<Manifest.FileEntry> wanted) throws IOException {
        mustFit(folder);
        download(folder, wanted);
        // last: a folder with a manifest is a release
        Files.write(folder.resolve(Manifest.FILE), manifestBytes);
        Files.writeString(
                folder.resolve(Manifest.HASH_FILE),
                manifest.hash() + "  " + Manifest.FILE + "\n",
                StandardCharsets.UTF_8);
    }

    /** A folder that holds another release is left alone. */
    private void mustFit(Path folder) throws IOException {
        Path there = folder.resolve(Manifest.FILE);
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw Failure.usage(folder + " is a file", "name a folder with --to");
        }
        if (Files.isRegularFile(there)
                && !Manifest.read(Files.readAllBytes(there)).hash().equals(manifest.hash())) {
            throw Failure.usage(folder + " holds another release", "name another folder with --to");
        }
    }

    private void download(Path folder, List<Manifest.FileEntry> wanted) throws IOException {
        Files.createDirectories(folder);
        long total = wanted.stream().mapToLong(Manifest.FileEntry::bytes).sum();
        ExecutorService pool = Executors.newFixedThreadPool(AT_ONCE);
        try (ProgressLine progress = ProgressLine.ofBytes(Terminal.current(), "fetching", total)) {
            ReleaseDownload download =
                    new ReleaseDownload(client, manifest.number(), folder, silence, new AtomicLong(), progress);
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
}
