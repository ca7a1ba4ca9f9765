package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.tableweather.schema.check.CheckReport;
import org.tableweather.schema.digest.Sha256;

/**
 * Hands archives to a server: small ones at once, larger ones in a way that goes on after a break.
 *
 * @param server where to
 * @param terminal for the progress bar
 */
record ContributionUpload(ServerClient server, Terminal terminal) {
    private static final String CONTRIBUTIONS = "/api/v1/contributions";
    private static final long SMALL_BYTES = 4 << 20;
    private static final int REFUSED = 422;

    /**
     * What the server made of it.
     *
     * @param id number of the contribution
     * @param state {@code received}, {@code checked}, {@code accepted}, {@code refused} or {@code withdrawn}
     * @param sha256 of the archive
     * @param report the server's check report
     */
    record Answer(long id, String state, String sha256, CheckReport report) {

        boolean isRefused() {
            return state.equals("refused");
        }

        String inWords(Path path) {
            return String.format(
                    Locale.ROOT,
                    "%s: %s as contribution %d; %,d trials in %,d sessions",
                    path,
                    state,
                    id,
                    report.trials(),
                    report.sessions());
        }
    }

    /**
     * Sends an archive.
     *
     * @param archive a .zip
     */
    Answer send(Path archive) throws IOException {
        return send(archive, Sha256.of(archive));
    }

    /**
     * Sends an archive.
     *
     * @param archive a .zip
     * @param digest its SHA-256, 32 bytes
     */
    Answer send(Path archive, byte[] digest) throws IOException {
        String sha256 = HexFormat.of().formatHex(digest);
        JsonNode answer;
        if (Files.size(archive) <= SMALL_BYTES) {
            Map<String, String> headers = Map.of(
                    "Content-Type",
                    "application/zip",
                    "Content-Digest",
                    "sha-256=:" + Base64.getEncoder().encodeToString(digest) + ":");
            answer = server.post(CONTRIBUTIONS, headers, BodyPublishers.ofFile(archive), REFUSED);
        } else {
            new ResumableUpload(server, terminal, archive, sha256).send();
            answer = server.post(
                    CONTRIBUTIONS,
                    Map.of("Content-Type", "application/json"),
                    BodyPublishers.ofString(JsonText.of(Map.of("upload", sha256))),
                    REFUSED);
        }
        return answer(answer, sha256);
    }

    private Answer answer(JsonNode json, String sha256) throws IOException {
        boolean refused = json.path("status").asInt() == REFUSED;
        if (refused && !json.has("report")) {
            throw ServerProblem.of(
                    REFUSED, JsonText.of(json).getBytes(java.nio.charset.StandardCharsets.UTF_8), server.address());
        }
        CheckReport report = json.path("report").isObject()
                ? JsonText.as(json.path("report"), CheckReport.class)
                : new CheckReport(0, 0, List.of(), Map.of(), Map.of());
        return refused
                ? new Answer(json.path("contribution").asLong(), "refused", sha256, report)
                : new Answer(json.path("id").asLong(), json.path("state").asText(), sha256, report);
    }
}
