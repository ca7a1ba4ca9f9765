package org.tableweather.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import org.tableweather.release.Manifest;
import org.tableweather.schema.digest.Sha256;

/**
 * Brings files of a release here. What is being brought has the ending {@code .part}; a file has its own name only once its
 * SHA-256 is the one that the manifest states. After a break only the rest is asked for.
 *
 * @param server where from
 * @param number of the release
 * @param folder where to
 * @param silence longest that is borne on the line
 * @param done bytes that are here
 * @param progress told of them
 */
record ReleaseDownload(
        ServerClient server, int number, Path folder, Duration silence, AtomicLong done, LongConsumer progress) {
    private static final int PARTIAL = 206;
    private static final int NO_REST = 416;
    private static final int TRIES = 5;
    private static final long FIRST_PAUSE_MILLIS = 500;
    private static final int BUFFER = 1 << 16;

    /** Path of a file on the server. */
    static String path(int number, String file) {
        StringBuilder path = new StringBuilder("/api/v1/releases/" + number + "/files");
        for (String part : file.split("/")) {
            path.append('/').append(ServerClient.encoded(part));
        }
        return path.toString();
    }

    /**
     * Brings a file, unless it is here already.
     *
     * @throws Failure when what comes is not what was released
     */
    void bring(Manifest.FileEntry file) throws IOException {
        Path target = folder.resolve(file.path()).normalize();
        if (!target.startsWith(folder.normalize())) {
            throw Failure.refused(
                    "the manifest names " + file.path() + ", outside of the release", "do not trust this server");
        }
        if (isHere(target, file)) {
            progress.accept(done.addAndGet(file.bytes()));
            return;
        }
        Files.createDirectories(target.getParent());
        Path part = target.resolveSibling(target.getFileName() + ".part");
        for (int tried = 1; ; tried++) {
            try {
                goOn(file, part);
                break;
            } catch (IOException | Failure e) {
                boolean broken = e instanceof IOException || e.getCause() instanceof IOException;
                if (!broken || tried == TRIES) {
                    throw e;
                }
                pause(FIRST_PAUSE_MILLIS << tried);
            }
        }
        mustBe(file, part);
        Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }

    private static boolean isHere(Path target, Manifest.FileEntry file) throws IOException {
        return Files.isRegularFile(target)
                && Files.size(target) == file.bytes()
                && Sha256.hex(target).equals(file.sha256());
    }

    private void goOn(Manifest.FileEntry file, Path part) throws IOException {
        long held = Files.exists(part) ? Files.size(part) : 0;
        if (held > file.bytes()) {
            Files.delete(part);
            held = 0;
        }
        if (held == file.bytes() && held > 0) {
            return;
        }
        HttpResponse<InputStream> answer = server.from(path(number, file.path()), held);
        try (InputStream in = answer.body()) {
            if (answer.statusCode() == NO_REST) {
                Files.deleteIfExists(part);
                throw new IOException(file.path() + " is shorter on the server than it was");
            }
            boolean rest = answer.statusCode() == PARTIAL;
            copy(in, part, rest);
        }
    }

    private void copy(InputStream in, Path part, boolean rest) throws IOException {
        StandardOpenOption how = rest ? StandardOpenOption.APPEND : StandardOpenOption.TRUNCATE_EXISTING;
        try (OutputStream out = Files.newOutputStream(part, StandardOpenOption.CREATE, StandardOpenOption.WRITE, how);
                SilentLine line = new SilentLine(in, silence)) {
            byte[] buffer = new byte[BUFFER];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                line.heard();
                out.write(buffer, 0, read);
                progress.accept(done.addAndGet(read));
            }
            if (line.isCut()) {
                throw new IOException("nothing came for " + silence.toSeconds() + " s");
            }
        }
    }

    private void mustBe(Manifest.FileEntry file, Path part) throws IOException {
        long bytes = Files.size(part);
        String sha256 = Sha256.hex(part);
        if (bytes != file.bytes() || !sha256.equals(file.sha256())) {
            Files.delete(part);
            throw Failure.refused(
                    file.path() + " came with the SHA-256 " + sha256 + " and " + bytes + " bytes; release " + number
                            + " has " + file.sha256() + " and " + file.bytes(),
                    "fetch again; if it comes the same, the copy on the server is damaged: tell its operator");
        }
    }

    private static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Failure.fault("interrupted", "run it again: it goes on where it stopped")
                    .because(e);
        }
    }
}
