package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a hand-written server of the network's edge. */
class FindCommandTest {
    private static final String SUMMARY = """
            {"trials": 0, "sessions": 0, "rooms": 0, "contributors": 0, "shots": [{"name": "kick-3-rail", "trials": 4, "sessions": 1}],
             "kinds": [], "byRoom": [], "countries": [], "relativeHumidity": [], "temperature": [], "responses": [], "responsesFrom": 0}
            """;
    private final List<String> asked = new ArrayList<>();
    private HttpServer http;
    private String url;

    @TempDir
    Path folder;

    @BeforeEach
    void start() throws IOException {
        http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        http.start();
        url = "http://127.0.0.1:" + http.getAddress().getPort();
        answer("/api/v1/trials/summary", SUMMARY);
    }

    @AfterEach
    void stop() {
        http.stop(0);
    }

    private void answer(String path, String body) {
        http.createContext(path, exchange -> {
            note(exchange);
            byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("ETag", "\"damp@2\"");
            exchange.sendResponseHeaders(200, bytes.length);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
    }

    private void note(HttpExchange exchange) {
        asked.add(exchange.getRequestMethod() + " " + exchange.getRequestURI());
    }

    @Test
    void everyFilterGoesToTheServerByItsName() {
        answer("/api/v1/trials", "a,b\r\n");
        Ran ran = Ran.with(
                "find",
                "trials",
                "--csv",
                "--server",
                url,
                "--dew-point-from",
                "4.5",
                "--wool-to",
                "80",
                "--country",
                "NO",
                "--severity-to",
                "note",
                "--query",
                "damp@2");
        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(ran.out()).isEqualTo("a,b\r\n");
        assertThat(asked)
                .containsExactly(
                        "GET /api/v1/trials?dewPointFrom=4.5&woolTo=80&country=NO&severityTo=note&query=damp%402"
                                + "&format=csv&limit=100");
    }

    @Test
    void aFileIsWrittenWholeAndOfAllRows() throws IOException {
        answer("/api/v1/trials", "PAR1");
        Path file = Files.writeString(folder.resolve("kicks.parquet"), "what stood there");
        Ran ran = Ran.with(
                "find",
                "trials",
                "--format",
                "parquet",
                "--output",
                file.toString(),
                "--shot",
                "kick-3-rail",
                "--server",
                url);
        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(file).hasContent("PAR1");
        assertThat(asked).containsExactly("GET /api/v1/trials?shot=kick-3-rail&format=parquet");
    }

    @Test
    void aStreamThatBreaksOffLeavesWhatStoodThere() throws IOException {
        http.createContext("/api/v1/trials", exchange -> {
            exchange.sendResponseHeaders(200, 1000);
            exchange.getResponseBody().write(new byte[10]);
            exchange.getResponseBody().flush();
            exchange.close();
        });
        Path file = Files.writeString(folder.resolve("kicks.csv"), "what stood there");
        Ran ran = Ran.with("find", "trials", "--format", "csv", "--output", file.toString(), "--server", url);
        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(file).hasContent("what stood there");
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(file);
        }
    }

    @Test
    void wrongFormsAndFilesAreToldWithTheRemedy() {
        assertThat(Ran.with("find", "trials", "--format", "parquet", "--server", url)
                        .err())
                .contains("Parquet is no text to print", "--output trials.parquet");
        assertThat(Ran.with("find", "rooms", "--format", "ndjson", "--server", url)
                        .err())
                .contains("is for trials", "choose json or csv");
        assertThat(Ran.with("find", "trials", "--format", "xml", "--server", url)
                        .err())
                .contains("json, csv, ndjson, parquet");
        assertThat(Ran.with("find", "trials", "--dew-pont-from", "4", "--server", url)
                        .err())
                .contains("--dew-point-from");
        assertThat(Ran.with(
                                "find",
                                "trials",
                                "--csv",
                                "--output",
                                folder.resolve("no/x.csv").toString(),
                                "--server",
                                url)
                        .err())
                .contains("there is no folder");
        assertThat(asked).isEmpty();
    }

    @Test
    void aShotThatTheServerHasNeverSeenIsNamed() {
        Ran ran = Ran.with("find", "summary", "--shot", "kick-3-rial", "--server", url);
        assertThat(ran.out()).startsWith("0 trials in 0 sessions");
        assertThat(ran.err()).contains("no trial of the shot kick-3-rial; it has kick-3-rail");
    }

    @Test
    void aFilterIsSavedUnderAName() {
        answer("/api/v1/queries/damp", "{}");
        Ran ran = Ran.with("find", "summary", "--rh-from", "55", "--save", "damp", "--token", "t", "--server", url);
        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(ran.err()).contains("saved as damp@2");
        assertThat(asked.get(0)).isEqualTo("PUT /api/v1/queries/damp");
        assertThat(Ran.with("find", "summary", "--save", "damp", "--server", url)
                        .err())
                .contains("no filter to save");
        assertThat(Ran.with("find", "queries", "--delete", "damp", "--token", "t", "--server", url)
                        .exitCode())
                .isZero();
        assertThat(asked).contains("DELETE /api/v1/queries/damp");
    }
}
