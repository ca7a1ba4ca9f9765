package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;

/** Speaks to a server; every refusal becomes a {@link Failure} with the server's own words. */
final class ServerClient {
    private static final Duration CONNECT = Duration.ofSeconds(10);
    private static final Duration ANSWER = Duration.ofMinutes(10);

    private final URI server;
    private final Optional<String> token;
    private final HttpClient http = HttpClient.newBuilder()
            .connectTimeout(CONNECT)
            .version(HttpClient.Version.HTTP_1_1)
            .build();

    ServerClient(URI server, Optional<String> token) {
        this.server = server;
        this.token = token;
    }

    /** The same server with another token. */
    ServerClient withToken(String other) {
        return new ServerClient(server, Optional.of(other));
    }

    URI address() {
        return server;
    }

    /** Whether the server answers that it is ready. */
    boolean isReady() {
        try {
            HttpRequest request = HttpRequest.newBuilder(server.resolve("/health/ready"))
                    .timeout(Duration.ofSeconds(5))
                    .build();
            return http.send(request, BodyHandlers.discarding()).statusCode() == 200;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    /**
     * Asks for JSON.
     *
     * @param path below the server's address
     * @param query names and values, in order
     */
    JsonNode get(String path, Map<String, String> query) throws IOException {
        return json(bytes(path, query, "application/json"));
    }

    /** Asks for bytes of one media type. */
    byte[] bytes(String path, Map<String, String> query, String mediaType) throws IOException {
        try (InputStream body = stream(path, query, mediaType)) {
            return body.readAllBytes();
        }
    }

    /** Asks for a stream of one media type; to be closed. */
    InputStream stream(String path, Map<String, String> query, String mediaType) throws IOException {
        return send(request(path, query).header("Accept", mediaType).GET().build())
                .body();
    }

    /**
     * Asks for a file from a byte on.
     *
     * @param path below the server's address
     * @param from first byte wanted
     * @return status 200 with the whole, 206 with the rest, or 416 when there is no rest; the body is to be closed
     */
    HttpResponse<InputStream> from(String path, long from) throws IOException {
        HttpRequest.Builder request = request(path, Map.of()).GET();
        if (from > 0) {
            request.header("Range", "bytes=" + from + "-");
        }
        HttpResponse<InputStream> response = exchange(request.build());
        if (isGood(response.statusCode()) || response.statusCode() == 416) {
            return response;
        }
        try (InputStream body = response.body()) {
            throw ServerProblem.of(response.statusCode(), body.readAllBytes(), server);
        }
    }

    /** Posts JSON, and takes JSON. */
    JsonNode post(String path, Object body) throws IOException {
        BodyPublisher json = BodyPublishers.ofString(JsonText.of(body));
        return post(path, Map.of("Content-Type", "application/json"), json, 200);
    }

    /**
     * Posts anything, and takes JSON.
     *
     * @param headers beside the usual ones
     * @param alsoAnswer a status that is an answer here, and no failure
     */
    JsonNode post(String path, Map<String, String> headers, BodyPublisher body, int alsoAnswer) throws IOException {
        HttpRequest.Builder request =
                request(path, Map.of()).header("Accept", "application/json").POST(body);
        headers.forEach(request::header);
        HttpResponse<InputStream> response = exchange(request.build());
        try (InputStream answer = response.body()) {
            byte[] bytes = answer.readAllBytes();
            if (response.statusCode() != alsoAnswer) {
                mustBeGood(response.statusCode(), bytes);
            }
            return json(bytes);
        }
    }

    private JsonNode json(byte[] answer) {
        try {
            return JsonText.tree(answer);
        } catch (IOException e) {
            throw Failure.server(server + " answered what is no JSON", "is it a Tableweather server? see --server")
                    .because(e);
        }
    }

    /**
     * Sends anything, and takes one header of the answer.
     *
     * @param headers beside the usual ones
     * @param wanted name of the header
     */
    Optional<String> header(String method, String path, Map<String, String> headers, BodyPublisher body, String wanted)
            throws IOException {
        HttpRequest.Builder request = request(path, Map.of()).method(method, body);
        headers.forEach(request::header);
        HttpResponse<InputStream> response = exchange(request.build());
        try (InputStream answer = response.body()) {
            mustBeGood(response.statusCode(), answer.readAllBytes());
            return response.headers().firstValue(wanted);
        }
    }

    /** Has the server make an analysis. */
    AnalysisRun analysis(String analyzer, Map<String, String> parameters) throws IOException {
        return AnalysisJson.read(analysisJson(analyzer, parameters));
    }

    /** The bytes of an analysis as the server prints it. */
    byte[] analysisJson(String analyzer, Map<String, String> parameters) throws IOException {
        return bytes("/api/v1/analyses/" + encoded(analyzer), parameters, "application/json");
    }

    private HttpRequest.Builder request(String path, Map<String, String> query) {
        String parameters = query.entrySet().stream()
                .map(entry -> encoded(entry.getKey()) + "=" + encoded(entry.getValue()))
                .collect(Collectors.joining("&"));
        HttpRequest.Builder request = HttpRequest.newBuilder(
                        URI.create(server + path + (parameters.isEmpty() ? "" : "?" + parameters)))
                .timeout(ANSWER);
        token.ifPresent(secret -> request.header("Authorization", "Bearer " + secret));
        return request;
    }

    private HttpResponse<InputStream> send(HttpRequest request) throws IOException {
        HttpResponse<InputStream> response = exchange(request);
        if (isGood(response.statusCode())) {
            return response;
        }
        try (InputStream body = response.body()) {
            throw ServerProblem.of(response.statusCode(), body.readAllBytes(), server);
        }
    }

    private HttpResponse<InputStream> exchange(HttpRequest request) {
        try {
            return http.send(request, BodyHandlers.ofInputStream());
        } catch (IOException e) {
            throw unreachable(e);
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    private static boolean isGood(int status) {
        return status >= 200 && status < 300;
    }

    private void mustBeGood(int status, byte[] body) {
        if (!isGood(status)) {
            throw ServerProblem.of(status, body, server);
        }
    }

    private Failure unreachable(IOException e) {
        String reason = e instanceof ConnectException ? "connection refused" : String.valueOf(e.getMessage());
        return Failure.server(
                        "no server answers at " + server + " (" + reason + ")",
                        "start one with: tableweather serve; or name another with --server URL")
                .because(e);
    }

    private static Failure interrupted(InterruptedException e) {
        Thread.currentThread().interrupt();
        return Failure.fault("interrupted", "").because(e);
    }

    static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
