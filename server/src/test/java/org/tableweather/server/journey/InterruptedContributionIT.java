package org.tableweather.server.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.server.Examples;

/**
 * A contribution that is interrupted at any point leaves either all or nothing, and sending it again ends in one copy.
 * Each case has a contribution of its own on one server, which is killed and started again.
 */
class InterruptedContributionIT {
    /** Rows enough that some are on their way to the database while others are still being read. */
    private static final int TRIALS = 40_000;

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    @TempDir
    static Path root;

    private static Path faultFile;
    private static SpawnedServer server;

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        faultFile = root.resolve("fault");
        server = SpawnedServer.start(data(), faultFile);
    }

    @AfterAll
    static void stop() throws InterruptedException {
        server.stop();
        assertThat(data().resolve("server.json")).doesNotExist();
        assertThat(data().resolve("pg/postmaster.pid")).doesNotExist();
    }

    private static Path data() {
        return root.resolve("data");
    }

    /** A contribution named after its case. */
    private record Case(String name, byte[] archive, String sha256) {

        static Case of(String name) {
            byte[] archive = Examples.pack(large(name));
            return new Case(name, archive, Hex.sha256(archive));
        }

        private static ExampleFolder large(String name) {
            StringBuilder rows = new StringBuilder("session,trial,kind,shot,temp_c,rh_pct,rebound_angle_deg\n");
            for (int i = 0; i < TRIALS; i++) {
                // two sessions, one after the other
                rows.append(i < TRIALS / 2 ? "s1," : "s2,")
                        .append(i)
                        .append(",rebound,rebound-45-ramp,21.5,4")
                        .append(i % 10)
                        .append(",4")
                        .append(i * 7 % 5)
                        .append('.')
                        .append(i * 13 % 100)
                        .append('\n');
            }
            return Examples.folder(name).remove("climate.csv").put("trials.csv", rows.toString());
        }
    }

    private static HttpRequest.Builder request(String path) throws IOException {
        return HttpRequest.newBuilder(URI.create(server.url() + path))
                .timeout(Duration.ofMinutes(2))
                .header("Authorization", "Bearer " + server.token());
    }

    private static HttpResponse<String> send(Case of) throws IOException, InterruptedException {
        return HTTP.send(
                request("/api/v1/contributions")
                        .header("Content-Type", "application/zip")
                        .POST(BodyPublishers.ofByteArray(of.archive()))
                        .build(),
                BodyHandlers.ofString());
    }

    /** Sends; the server dies meanwhile, or at once after. */
    private static void sendIntoTheVoid(Case of) throws InterruptedException {
        try {
            send(of);
        } catch (IOException e) {
            // no answer came: just what happens to a client then
        }
    }

    private static Optional<JsonNode> known(Case of) throws IOException, InterruptedException {
        HttpResponse<String> answer =
                HTTP.send(request("/api/v1/contributions?sha256=" + of.sha256()).build(), BodyHandlers.ofString());
        JsonNode list = JSON.readTree(answer.body()).get("contributions");
        assertThat(list.size()).isLessThanOrEqualTo(1);
        return list.isEmpty() ? Optional.empty() : Optional.of(list.get(0));
    }

    private static long rows(Case of) throws IOException, SQLException {
        return server.count("SELECT count(*) FROM trial t JOIN session s ON s.id = t.session_id JOIN room r"
                + " ON r.id = s.room_id WHERE r.key = '" + of.name() + "/cellar'");
    }

    private static long rowsOfNoSession() throws IOException, SQLException {
        return server.count(
                "SELECT count(*) FROM trial t WHERE NOT EXISTS (SELECT FROM session s WHERE s.id = t.session_id)");
    }

    private static void restart() throws IOException, InterruptedException {
        Files.deleteIfExists(faultFile);
        server = SpawnedServer.start(data(), faultFile);
    }

    /** Right after the restart: all or nothing, whatever the server is doing about it. */
    private static void isAllOrNothing(Case of) throws IOException, InterruptedException, SQLException {
        assertThat(rows(of)).isIn(0L, (long) TRIALS);
        assertThat(rowsOfNoSession()).isZero();
    }

    private static void endsInOneCopy(Case of) throws IOException, InterruptedException, SQLException {
        for (int time = 1; time <= 2; time++) {
            HttpResponse<String> answer = send(of);
            assertThat(answer.statusCode()).as(answer.body()).isIn(200, 201);
            JsonNode body = JSON.readTree(answer.body());
            assertThat(body.get("state").asText()).isEqualTo("accepted");
            assertThat(body.get("trials").asLong()).isEqualTo(TRIALS);
            assertThat(rows(of)).isEqualTo(TRIALS);
        }
        assertThat(known(of)).isPresent();
        assertThat(rowsOfNoSession()).isZero();
        assertThat(server.count("SELECT count(*) FROM session s JOIN room r ON r.id = s.room_id WHERE r.key = '"
                        + of.name() + "/cellar'"))
                .isEqualTo(2);
        try (Stream<Path> archives = Files.list(data().resolve("archives"))) {
            assertThat(archives.filter(file -> file.getFileName().toString().startsWith(of.sha256())))
                    .hasSize(1);
        }
        assertThat(Files.readAllBytes(data().resolve("archives").resolve(of.sha256() + ".zip")))
                .isEqualTo(of.archive());
        try (Stream<Path> incoming = Files.list(data().resolve("incoming"))) {
            assertThat(incoming).isEmpty();
        }
    }

    /** Mid-upload; uploaded; moved to its place; received; mid-COPY; stored, not committed; committed, not answered. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPLOAD_BEGUN",
                "UPLOAD_COMPLETE",
                "ARCHIVE_STORED",
                "RECEIVED",
                "COPYING",
                "BEFORE_COMMIT",
                "BEFORE_ANSWER"
            })
    void serverKilledAt(String point) throws IOException, InterruptedException, SQLException {
        Case of = Case.of(point.toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
        Files.writeString(faultFile, point);
        sendIntoTheVoid(of);
        assertThat(server.awaitEnd()).isEqualTo(137);
        restart();
        isAllOrNothing(of);
        endsInOneCopy(of);
    }

    @Test
    void serverAndDatabaseKilledMidCopy() throws IOException, InterruptedException, SQLException {
        Case of = Case.of("power-cut");
        Thread client = new Thread(() -> {
            try {
                sendIntoTheVoid(of);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        client.start();
        awaitCopy();
        server.killWithDatabase();
        client.join();
        restart();
        isAllOrNothing(of);
        endsInOneCopy(of);
    }

    private static void awaitCopy() throws IOException, SQLException, InterruptedException {
        for (int i = 0; i < 3000; i++) {
            if (server.count("SELECT count(*) FROM pg_stat_progress_copy WHERE tuples_processed > 0") > 0) {
                return;
            }
            Thread.sleep(2);
        }
        throw new IllegalStateException("no copy was seen");
    }

    @Test
    void clientKilledMidUpload() throws IOException, InterruptedException, SQLException {
        Case of = Case.of("client-gone");
        URI address = URI.create(server.url());
        try (Socket socket = new Socket(address.getHost(), address.getPort())) {
            OutputStream out = socket.getOutputStream();
            out.write(("POST /api/v1/contributions HTTP/1.1\r\nHost: x\r\nAuthorization: Bearer " + server.token()
                            + "\r\nContent-Type: application/zip\r\nContent-Length: " + of.archive().length
                            + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            out.write(of.archive(), 0, of.archive().length / 2);
            out.flush();
            awaitIncoming(1);
        }
        awaitIncoming(0);
        assertThat(known(of)).isEmpty();
        isAllOrNothing(of);
        endsInOneCopy(of);
    }

    private static void awaitIncoming(int files) throws IOException, InterruptedException {
        for (int i = 0; i < 500; i++) {
            try (Stream<Path> incoming = Files.list(data().resolve("incoming"))) {
                if (incoming.count() == files) {
                    return;
                }
            }
            Thread.sleep(20);
        }
        throw new IllegalStateException("incoming never held " + files + " files");
    }

    @Test
    void serverKilledBetweenThePiecesOfAnUpload() throws IOException, InterruptedException, SQLException {
        Case of = Case.of("pieces");
        int half = of.archive().length / 2;
        assertThat(piece(of, 0, half)).isEqualTo(204);
        server.kill();
        restart();
        HttpResponse<Void> held = HTTP.send(
                request("/api/v1/uploads/" + of.sha256())
                        .method("HEAD", BodyPublishers.noBody())
                        .build(),
                BodyHandlers.discarding());
        assertThat(held.headers().firstValueAsLong("Upload-Offset")).hasValue(half);
        assertThat(piece(of, half, of.archive().length)).isEqualTo(204);
        server.kill();
        restart();
        isAllOrNothing(of);
        HttpResponse<String> answer = HTTP.send(
                request("/api/v1/contributions")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString("{\"upload\": \"" + of.sha256() + "\"}"))
                        .build(),
                BodyHandlers.ofString());
        assertThat(answer.statusCode()).isEqualTo(201);
        endsInOneCopy(of);
    }

    private static int piece(Case of, int from, int to) throws IOException, InterruptedException {
        HttpRequest request = request("/api/v1/uploads/" + of.sha256())
                .header("Content-Type", "application/partial-upload")
                .header("Upload-Offset", Integer.toString(from))
                .method("PATCH", BodyPublishers.ofByteArray(Arrays.copyOfRange(of.archive(), from, to)))
                .build();
        return HTTP.send(request, BodyHandlers.discarding()).statusCode();
    }

    @Test
    void whatWasReceivedIsJudgedAfterTheRestartWithoutSendingAgain()
            throws IOException, InterruptedException, SQLException {
        Case of = Case.of("left-received");
        Files.writeString(faultFile, "RECEIVED");
        sendIntoTheVoid(of);
        assertThat(server.awaitEnd()).isEqualTo(137);
        restart();
        for (int i = 0; i < 500 && !state(of).equals("accepted"); i++) {
            Thread.sleep(20);
        }
        assertThat(state(of)).isEqualTo("accepted");
        assertThat(rows(of)).isEqualTo(TRIALS);
        endsInOneCopy(of);
    }

    private static String state(Case of) throws IOException, InterruptedException {
        return known(of).orElseThrow().get("state").asText();
    }

    @Test
    void aRefusalThatIsCutShortIsMadeAgain() throws IOException, InterruptedException, SQLException {
        byte[] archive =
                Examples.pack(Examples.folder("cut-refusal").replace("trials.csv", "rebound-45-ramp", "no-such-shot"));
        Case of = new Case("cut-refusal", archive, Hex.sha256(archive));
        Files.writeString(faultFile, "BEFORE_REFUSAL");
        sendIntoTheVoid(of);
        assertThat(server.awaitEnd()).isEqualTo(137);
        restart();
        assertThat(send(of).statusCode()).isEqualTo(422);
        assertThat(state(of)).isEqualTo("refused");
        assertThat(rows(of)).isZero();
        assertThat(server.count("SELECT count(*) FROM room WHERE key = 'cut-refusal/cellar'"))
                .isZero();
        assertThat(List.of(send(of).statusCode(), send(of).statusCode())).containsOnly(422);
    }

    @Test
    void aSecondServerOnTheSameDataFolderIsRefused() throws IOException, InterruptedException {
        Path log = root.resolve("second.log");
        Process second = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Dtableweather.data=" + data(),
                        "-Dtableweather.port=0",
                        "-jar",
                        Path.of("target/quarkus-app/quarkus-run.jar")
                                .toAbsolutePath()
                                .toString())
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        assertThat(second.waitFor()).isEqualTo(1);
        assertThat(Files.readString(log))
                .contains("is in use by another server")
                .contains(server.url());
        assertThat(server.isAlive()).isTrue();
    }
}
