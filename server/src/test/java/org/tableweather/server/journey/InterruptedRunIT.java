package org.tableweather.server.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.server.Examples;

/** Analyses that wait or are being made when the server is killed. */
class InterruptedRunIT {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final HttpClient HTTP = HttpClient.newHttpClient();
    private static final int AT_A_TIME = 2;

    @TempDir
    Path root;

    private SpawnedServer server;

    @Test
    @Timeout(300)
    void areToldAsInterruptedAndCanBeStartedAgain() throws IOException, InterruptedException, SQLException {
        server = SpawnedServer.start(root.resolve("data"), root.resolve("fault"));
        contribute();
        String[] ids = new String[AT_A_TIME + 1];
        try (Connection holder = server.connect();
                Statement lock = holder.createStatement()) {
            // no analysis of something new can go on while nobody can read summaries
            holder.setAutoCommit(false);
            lock.execute("LOCK TABLE session_summary IN ACCESS EXCLUSIVE MODE");
            for (int i = 0; i < ids.length; i++) {
                ids[i] = ask(31 + i).path("id").asText();
            }
            awaitState(ids[0], "running");
            awaitState(ids[1], "running");
            assertThat(run(ids[2]).path("state").asText()).isEqualTo("queued");
            server.kill();
        } catch (SQLException e) {
            // the database may close the line first
            assertThat(server.isAlive()).isFalse();
        }

        server = SpawnedServer.start(root.resolve("data"), root.resolve("fault"));
        for (String id : ids) {
            JsonNode run = run(id);
            assertThat(run.path("state").asText()).isEqualTo("interrupted");
            assertThat(run.path("attempts").path(0).path("failure").asText()).contains("the server was ended");
        }
        assertThat(send("POST", "/api/v1/runs/" + ids[0] + "/rerun", "{}").statusCode())
                .isEqualTo(202);
        assertThat(ask(32).path("id").asText())
                .as("asking again starts it again too")
                .isEqualTo(ids[1]);
        for (String id : Arrays.asList(ids[0], ids[1])) {
            awaitState(id, "done");
            JsonNode attempts = run(id).path("attempts");
            assertThat(attempts.size()).isEqualTo(2);
            assertThat(attempts.path(1).path("sameBytes").asBoolean()).isTrue();
        }
        server.stop();
    }

    private void contribute() throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/v1/contributions"))
                .header("Authorization", "Bearer " + server.token())
                .header("Content-Type", "application/zip")
                .POST(BodyPublishers.ofByteArray(Examples.archive("interrupted-run")))
                .build();
        assertThat(HTTP.send(request, BodyHandlers.ofString()).statusCode()).isEqualTo(201);
    }

    private JsonNode ask(int curveFromPct) throws IOException, InterruptedException {
        String question =
                "{\"analyzer\": \"rebound-humidity\", \"parameters\": {\"curve_from_pct\": \"" + curveFromPct + "\"}}";
        HttpResponse<String> answer = send("POST", "/api/v1/analyses", question);
        assertThat(answer.statusCode()).as(answer.body()).isIn(200, 202);
        return JSON.readTree(answer.body());
    }

    private JsonNode run(String id) throws IOException, InterruptedException {
        return JSON.readTree(send("GET", "/api/v1/runs/" + id, "").body());
    }

    private void awaitState(String id, String state) throws IOException, InterruptedException {
        while (!run(id).path("state").asText().equals(state)) {
            Thread.sleep(20);
        }
    }

    private HttpResponse<String> send(String method, String path, String body)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(server.url() + path));
        if (!body.isEmpty()) {
            request.header("Content-Type", "application/json");
        }
        return HTTP.send(
                request.method(method, body.isEmpty() ? BodyPublishers.noBody() : BodyPublishers.ofString(body))
                        .build(),
                BodyHandlers.ofString());
    }
}
