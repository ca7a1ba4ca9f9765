package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * A server of this machine that keeps running when the command has ended.
 *
 * @param data its data folder
 * @param process the server's process
 * @param url where it answers
 */
record LocalServer(Path data, ProcessHandle process, URI url) {
    private static final Duration START_PATIENCE = Duration.ofMinutes(3);
    private static final long STOP_PATIENCE_SECONDS = 90;
    private static final long POLL_MILLIS = 100;
    private static final String COMPLAINT = "tableweather server: ";

    /** The server that runs on a data folder; empty when there is none, or when the process is not ours. */
    static Optional<LocalServer> running(Path data) throws IOException {
        Path file = data.resolve("server.json");
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        JsonNode server = JsonText.tree(Files.readAllBytes(file));
        return ProcessHandle.of(server.path("pid").asLong())
                .filter(process -> isOurs(process, data))
                .map(process -> new LocalServer(
                        data, process, URI.create(server.path("url").asText())));
    }

    // a process id may have been given to another program since: its arguments name our data folder, or it is not ours
    private static boolean isOurs(ProcessHandle process, Path data) {
        String ours = ServerJar.dataArgument(data);
        return process.isAlive()
                && process.info()
                        .arguments()
                        .map(arguments -> Arrays.asList(arguments).contains(ours))
                        .orElse(false);
    }

    /**
     * Starts one, detached, and waits until it answers.
     *
     * @param data its data folder, created if need be
     * @param port to listen on; 0 for a free one
     */
    static LocalServer start(Path data, int port) throws IOException, InterruptedException {
        OwnerOnly.folder(data);
        Path log = data.resolve("server.log");
        List<String> command = ServerJar.command(data, "127.0.0.1", port == 0 ? freePort() : port);
        Process process = new ProcessBuilder(command)
                .redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")))
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.to(log.toFile()))
                .start();
        long patienceEnds = System.nanoTime() + START_PATIENCE.toNanos();
        while (process.isAlive() && System.nanoTime() < patienceEnds) {
            Optional<LocalServer> running = running(data).filter(one -> one.process.pid() == process.pid());
            if (running.isPresent() && running.get().isReady()) {
                return running.get();
            }
            Thread.sleep(POLL_MILLIS);
        }
        process.destroy();
        throw Failure.fault("the server did not start: " + lastLine(log), "see " + log);
    }

    /** A port of this machine that nobody uses at the moment. */
    static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private boolean isReady() {
        return new ServerClient(url, Optional.empty()).isReady();
    }

    /** Tells it to end, and waits until it has. */
    void stop() throws InterruptedException {
        process.destroy();
        try {
            process.onExit().get(STOP_PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (ExecutionException | TimeoutException e) {
            throw Failure.fault(
                    "the server (process " + process.pid() + ") has not ended after " + STOP_PATIENCE_SECONDS + " s",
                    "see " + data.resolve("server.log"));
        }
    }

    private static String lastLine(Path log) {
        try {
            List<String> lines = Files.readAllLines(log);
            return lines.stream()
                    .filter(line -> line.startsWith(COMPLAINT))
                    .map(line -> line.substring(COMPLAINT.length()))
                    .reduce((earlier, later) -> later)
                    .orElse(lines.isEmpty() ? "it said nothing" : lines.get(lines.size() - 1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
