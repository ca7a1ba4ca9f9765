package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a hand-written server of the network's edge: refusals, strangers, broken lines. */
class ServerClientTest {
    private static final String SHA256 = "00".repeat(32);
    private static final Terminal NOBODY_LOOKS = new Terminal(false, 80, false);

    private HttpServer http;
    private ServerClient client;

    @BeforeEach
    void start() throws IOException {
        http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        http.start();
        client = new ServerClient(
                URI.create("http://127.0.0.1:" + http.getAddress().getPort()), Optional.of("secret"));
    }

    @AfterEach
    void stop() {
        http.stop(0);
    }

    @Test
    void tellsARefusalInTheServersWordsWithARemedy() {
        answer("/api/v1/rooms", 401, "application/problem+json", """
                {"type": "urn:x", "title": "A valid token is needed", "status": 401, "code": "not-authenticated",
                 "detail": "the token is expired"}""");

        assertThatThrownBy(() -> client.get("/api/v1/rooms", Map.of()))
                .isInstanceOfSatisfying(Failure.class, failure -> {
                    assertThat(failure.exitCode()).isEqualTo(ExitCodes.SERVER);
                    assertThat(failure)
                            .hasMessage("the server refused (401 not-authenticated):"
                                    + " A valid token is needed: the token is expired");
                    assertThat(failure.remedy()).contains("--token-file");
                });
    }

    @Test
    void doubtsAServerThatSpeaksOtherwise() {
        answer("/api/v1/rooms", 404, "text/html", "<html>Not\n here</html>");

        assertThatThrownBy(() -> client.get("/api/v1/rooms", Map.of()))
                .isInstanceOfSatisfying(Failure.class, failure -> {
                    assertThat(failure.getMessage()).contains("404 <html>Not here</html>");
                    assertThat(failure.remedy()).contains("is it a Tableweather server?");
                });
    }

    @Test
    void doubtsAnAnswerThatIsNoJson() {
        answer("/api/v1/rooms", 200, "text/html", "<html>Welcome to the hotel network</html>");

        assertThatThrownBy(() -> client.get("/api/v1/rooms", Map.of()))
                .isInstanceOfSatisfying(
                        Failure.class, failure -> assertThat(failure.exitCode()).isEqualTo(ExitCodes.SERVER));
    }

    @Test
    void handsOverTheTokenAndWalksThePages() throws Exception {
        http.createContext("/api/v1/rooms", exchange -> {
            boolean authorised =
                    "Bearer secret".equals(exchange.getRequestHeaders().getFirst("Authorization"));
            boolean second = String.valueOf(exchange.getRequestURI().getQuery()).contains("after=abc");
            send(
                    exchange,
                    authorised ? 200 : 500,
                    "application/json",
                    second ? "{\"rooms\": [3], \"next\": null}" : "{\"rooms\": [1, 2], \"next\": \"abc\"}");
        });
        StringBuilder rows = new StringBuilder();

        boolean more = new ServerList(client, "rooms", Map.of()).read(Long.MAX_VALUE, rows::append);

        assertThat(rows).hasToString("123");
        assertThat(more).isFalse();
        assertThat(new ServerList(client, "rooms", Map.of()).read(2, row -> {}))
                .as("two of three are asked for: there are more")
                .isTrue();
    }

    @Test
    void goesOnWithAnUploadWhereTheLineBroke(@TempDir Path directory) throws Exception {
        byte[] content = new byte[300_000];
        new Random(1).nextBytes(content);
        Path archive = Files.write(directory.resolve("a.zip"), content);
        ByteArrayOutputStream held = new ByteArrayOutputStream();
        int[] pieces = {0};
        http.createContext("/api/v1/uploads/" + SHA256, exchange -> {
            if (exchange.getRequestMethod().equals("PATCH")) {
                int offset = Integer.parseInt(exchange.getRequestHeaders().getFirst("Upload-Offset"));
                assertThat(offset).isEqualTo(held.size());
                InputStream body = exchange.getRequestBody();
                if (pieces[0]++ == 0) {
                    held.write(body.readNBytes(100_000));
                    exchange.close();
                    return;
                }
                held.write(body.readAllBytes());
            }
            exchange.getResponseHeaders().set("Upload-Offset", Integer.toString(held.size()));
            exchange.sendResponseHeaders(204, -1);
            exchange.close();
        });

        new ResumableUpload(client, NOBODY_LOOKS, archive, SHA256).send();

        assertThat(held.toByteArray()).isEqualTo(content);
        assertThat(pieces[0]).as("a broken piece, and the rest").isEqualTo(2);
    }

    private void answer(String path, int status, String mediaType, String body) {
        http.createContext(path, exchange -> send(exchange, status, mediaType, body));
    }

    private static void send(HttpExchange exchange, int status, String mediaType, String body) throws IOException {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        exchange.getResponseHeaders().set("Content-Type", mediaType);
        exchange.sendResponseHeaders(status, bytes.length);
        exchange.getResponseBody().write(bytes);
        exchange.close();
    }
}
