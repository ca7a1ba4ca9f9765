package org.tableweather.cli;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.LongConsumer;

/**
 * Sends an archive to where the server keeps what it has of it: after a break, of this program or of the line, only the
 * rest is sent.
 *
 * @param server where to
 * @param terminal for the progress bar
 * @param archive what
 * @param sha256 its name there
 */
record ResumableUpload(ServerClient server, Terminal terminal, Path archive, String sha256) {
    private static final String OFFSET = "Upload-Offset";
    private static final int TRIES = 5;
    private static final long FIRST_PAUSE_MILLIS = 500;

    /** Sends what the server lacks. */
    void send() throws IOException {
        long bytes = Files.size(archive);
        try (ProgressLine progress = ProgressLine.ofBytes(terminal, "uploading", bytes)) {
            for (int tried = 1; ; tried++) {
                try {
                    long held = held();
                    progress.accept(held);
                    if (held < bytes) {
                        sendFrom(held, bytes - held, progress);
                    }
                    return;
                } catch (Failure failure) {
                    if (tried == TRIES || !(failure.getCause() instanceof IOException)) {
                        throw failure;
                    }
                    pause(FIRST_PAUSE_MILLIS << tried);
                }
            }
        }
    }

    private long held() throws IOException {
        return server.header("HEAD", path(), Map.of(), BodyPublishers.noBody(), OFFSET)
                .map(Long::parseLong)
                .orElse(0L);
    }

    private void sendFrom(long offset, long length, ProgressLine progress) throws IOException {
        BodyPublisher rest =
                BodyPublishers.fromPublisher(BodyPublishers.ofInputStream(() -> open(offset, progress)), length);
        server.header(
                "PATCH",
                path(),
                Map.of("Content-Type", "application/partial-upload", OFFSET, Long.toString(offset)),
                rest,
                OFFSET);
    }

    private InputStream open(long offset, LongConsumer progress) {
        try {
            InputStream in = Files.newInputStream(archive);
            in.skipNBytes(offset);
            return new Counted(in, offset, progress);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String path() {
        return "/api/v1/uploads/" + sha256;
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

    private static final class Counted extends FilterInputStream {
        private final LongConsumer progress;
        private long position;

        Counted(InputStream in, long offset, LongConsumer progress) {
            super(in);
            this.position = offset;
            this.progress = progress;
        }

        @Override
        public int read() throws IOException {
            int value = super.read();
            if (value >= 0) {
                progress.accept(++position);
            }
            return value;
        }

        @Override
        public int read(byte[] bytes, int start, int length) throws IOException {
            int read = super.read(bytes, start, length);
            if (read > 0) {
                position += read;
                progress.accept(position);
            }
            return read;
        }
    }
}
