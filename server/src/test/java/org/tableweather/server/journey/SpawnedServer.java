package org.tableweather.server.journey;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;

/** The packaged server as a process of its own, on a data folder that outlives it. */
final class SpawnedServer {
    private static final long PATIENCE_MILLIS = 120_000;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path data;
    private final Process process;
    private final String url;

    private SpawnedServer(Path data, Process process, String url) {
        this.data = data;
        this.process = process;
        this.url = url;
    }

    /** Starts it and waits until it answers. */
    static SpawnedServer start(Path data, Path faultFile) throws IOException, InterruptedException {
        Path jar = Path.of("target/quarkus-app/quarkus-run.jar").toAbsolutePath();
        Files.deleteIfExists(data.resolve("server.json"));
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-XX:TieredStopAtLevel=1",
                        "-Dtableweather.data=" + data,
                        "-Dtableweather.port=0",
                        "-Dtableweather.fault-file=" + faultFile,
                        "-jar",
                        jar.toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        data.resolveSibling("server.log").toFile()))
                .start();
        long patienceEnds = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (process.isAlive() && System.currentTimeMillis() < patienceEnds) {
            if (Files.exists(data.resolve("server.json"))) {
                JsonNode server = JSON.readTree(data.resolve("server.json").toFile());
                return new SpawnedServer(data, process, server.get("url").asText());
            }
            Thread.sleep(20);
        }
        process.destroyForcibly();
        throw new IOException("the server did not start: " + Files.readString(data.resolveSibling("server.log")));
    }

    String url() {
        return url;
    }

    /** The operator's token, which may contribute. */
    String token() throws IOException {
        return Files.readString(data.resolve("operator-token")).strip();
    }

    /** A connection to its database. */
    Connection connect() throws IOException, SQLException {
        String port =
                Files.readAllLines(data.resolve("pg/postmaster.pid")).get(3).strip();
        String address = "jdbc:postgresql://127.0.0.1:" + port + "/tableweather";
        String password = Files.readString(data.resolve("pg-password")).strip();
        return DriverManager.getConnection(address, "tableweather", password);
    }

    /** One number out of its database, asked there itself. */
    long count(String sql) throws IOException, SQLException {
        try (Connection connection = connect();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** kill -9; its database lives on. */
    void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
    }

    /** kill -9 of the server and of its database, as when the power goes. */
    void killWithDatabase() throws IOException, InterruptedException {
        long pid = Long.parseLong(
                Files.readAllLines(data.resolve("pg/postmaster.pid")).get(0));
        kill();
        ProcessHandle.of(pid).ifPresent(ProcessHandle::destroyForcibly);
    }

    /** Waits until it has ended by itself. */
    int awaitEnd() throws InterruptedException {
        if (!process.waitFor(PATIENCE_MILLIS, TimeUnit.MILLISECONDS)) {
            throw new IllegalStateException("the server still runs: the fault was not reached");
        }
        return process.exitValue();
    }

    /** Tells it to end in order. */
    int stop() throws InterruptedException {
        process.destroy();
        return awaitEnd();
    }
}
