package org.tableweather.analyzers.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;

/** A packaged server on a free loopback port with its own embedded PostgreSQL; ends when closed. */
final class BenchServer implements AutoCloseable {
    private static final List<String> TEXT_COLUMNS =
            List.of("session", "trial", "kind", "shot", "ball", "made", "note");

    private final Path root;
    private final Path data;
    private final Process process;
    private final String url;

    private BenchServer(Path root, Path data, Process process, String url) {
        this.root = root;
        this.data = data;
        this.process = process;
        this.url = url;
    }

    static BenchServer start(Path root, Path data) throws IOException, InterruptedException {
        Files.createDirectories(data.getParent());
        ProcessBuilder builder = new ProcessBuilder(
                        "java",
                        "-jar",
                        root.resolve("server/target/quarkus-app/quarkus-run.jar")
                                .toString())
                .redirectErrorStream(true)
                .redirectOutput(data.resolveSibling("server.log").toFile());
        builder.environment().put("TABLEWEATHER_DATA", data.toString());
        builder.environment().put("TABLEWEATHER_PORT", "0");
        Process process = builder.start();
        // a benchmark that is ended leaves no server behind
        Runtime.getRuntime().addShutdownHook(new Thread(process::destroy));
        Path ready = data.resolve("server.json");
        for (int i = 0; i < 3000 && process.isAlive(); i++) {
            if (Files.exists(ready)) {
                JsonNode server = new ObjectMapper().readTree(ready.toFile());
                return new BenchServer(root, data, process, server.path("url").asText());
            }
            Thread.sleep(100);
        }
        process.destroy();
        throw new IOException("the server did not get ready: read " + data.resolveSibling("server.log"));
    }

    String url() {
        return url;
    }

    Path tokenFile() {
        return data.resolve("operator-token");
    }

    /** Variables for commands that talk to this server. */
    Map<String, String> environment() {
        return Map.of("TABLEWEATHER_SERVER", url);
    }

    /** Seconds of a bare {@code psql \copy} of this file into a table of its own, of the file's columns, without index. */
    double copyBare(Path trials, int number) throws IOException, InterruptedException {
        String table = "bench_" + number;
        String columns;
        try (var lines = Files.lines(trials)) {
            columns = Arrays.stream(lines.findFirst().orElseThrow().split(","))
                    .map(column -> column + " " + type(column))
                    .collect(Collectors.joining(", "));
        }
        psql("create table " + table + " (" + columns + ")");
        return psql("\\copy " + table + " from '" + trials + "' csv header").seconds();
    }

    /** Seconds of a {@code psql \copy} of a table, or of a query in parentheses, to a CSV file with a header. */
    double copyTo(String what, Path file) throws IOException, InterruptedException {
        return psql("\\copy " + what + " to '" + file + "' csv header").seconds();
    }

    /** Has the command contribute a folder. */
    void contribute(Path repository, Path folder) throws IOException, InterruptedException {
        Measured.run(
                repository,
                environment(),
                List.of(
                        repository.resolve("client-cli/bin/tableweather").toString(),
                        "contribute",
                        folder.toString(),
                        "--no-check",
                        "--token-file",
                        tokenFile().toString()));
    }

    private static String type(String column) {
        if (TEXT_COLUMNS.contains(column)) {
            return "text";
        }
        if (column.equals("started_at")) {
            return "timestamptz";
        }
        return List.of("rails", "balls_made").contains(column) ? "smallint" : "double precision";
    }

    private Measured psql(String command) throws IOException, InterruptedException {
        List<String> pidFile = Files.readAllLines(data.resolve("pg/postmaster.pid"));
        String port = pidFile.get(3).strip();
        String password = Files.readString(data.resolve("pg-password"), StandardCharsets.UTF_8)
                .strip();
        return Measured.run(
                root,
                Map.of("PGPASSWORD", password),
                List.of(
                        "psql",
                        "-q",
                        "-X",
                        "-v",
                        "ON_ERROR_STOP=1",
                        "-h",
                        "127.0.0.1",
                        "-p",
                        port,
                        "-U",
                        "tableweather",
                        "-d",
                        "tableweather",
                        "-c",
                        command));
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
