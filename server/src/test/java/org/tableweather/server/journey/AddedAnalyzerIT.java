package org.tableweather.server.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.server.Examples;
import org.tableweather.server.plugin.OutsideJar;

/** The packaged server, which keeps its classes elsewhere than a build does, with a jar in its data folder. */
class AddedAnalyzerIT {
    private static final HttpClient HTTP = HttpClient.newHttpClient();

    @TempDir
    Path root;

    @Test
    void answersWithAnAnalyzerThatTheOperatorPinned() throws Exception {
        Path plugins = Files.createDirectories(root.resolve("data/plugins"));
        OutsideJar.pin(OutsideJar.example().writeTo(plugins.resolve("cushion.jar")));
        SpawnedServer server = SpawnedServer.start(root.resolve("data"), root.resolve("fault"));
        try {
            HttpRequest contribution = HttpRequest.newBuilder(URI.create(server.url() + "/api/v1/contributions"))
                    .header("Authorization", "Bearer " + server.token())
                    .header("Content-Type", "application/zip")
                    .POST(HttpRequest.BodyPublishers.ofByteArray(Examples.pack(Examples.folder("outside"))))
                    .build();
            assertThat(HTTP.send(contribution, HttpResponse.BodyHandlers.ofString())
                            .statusCode())
                    .isEqualTo(201);

            HttpResponse<String> answer = HTTP.send(
                    HttpRequest.newBuilder(URI.create(server.url() + "/api/v1/analyses/speed-kept"))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());

            assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
            JsonNode json = new ObjectMapper().readTree(answer.body());
            assertThat(json.path("outcome").asText()).isEqualTo("declined");
            assertThat(json.path("detail").asText()).startsWith("0 sessions with both speeds < 6");
            // two sessions of fifteen attempts
            assertThat(json.path("dataset").path("trials").asInt()).isEqualTo(30);
        } finally {
            server.stop();
        }
    }
}
