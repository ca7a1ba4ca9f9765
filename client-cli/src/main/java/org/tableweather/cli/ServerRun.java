package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.util.Map;
import java.util.TreeMap;

/** A kept analysis of a server: asked for, waited for, fetched. */
final class ServerRun {
    private static final long FIRST_PAUSE_MILLIS = 50;
    private static final long LONGEST_PAUSE_MILLIS = 2_000;

    private final ServerClient server;
    private final JsonNode run;

    private ServerRun(ServerClient server, JsonNode run) {
        this.server = server;
        this.run = run;
    }

    /** Asks for an analysis of what is published, and waits until it has ended. */
    static ServerRun ask(ServerClient server, String analyzer, Map<String, String> parameters) throws IOException {
        JsonNode asked =
                server.post("/api/v1/analyses", Map.of("analyzer", analyzer, "parameters", new TreeMap<>(parameters)));
        return ended(server, asked);
    }

    /** Has a run made again on its recorded sessions, and waits until that has ended. */
    static ServerRun again(ServerClient server, String id) throws IOException {
        return ended(server, server.post("/api/v1/runs/" + id + "/rerun", Map.of()));
    }

    private static ServerRun ended(ServerClient server, JsonNode asked) throws IOException {
        String path = "/api/v1/runs/" + asked.path("id").asText();
        JsonNode run = asked;
        try (ConclusionLine line = new ConclusionLine(Terminal.current())) {
            for (long pause = FIRST_PAUSE_MILLIS; isOnItsWay(run); pause = Math.min(2 * pause, LONGEST_PAUSE_MILLIS)) {
                sleep(pause);
                run = server.get(path, Map.of());
                show(run.path("progress"), line);
            }
        }
        return new ServerRun(server, run);
    }

    private static void show(JsonNode progress, ConclusionLine line) {
        int total = progress.path("total").asInt();
        if (total > 0) {
            String what = progress.path("what").asText();
            line.at(
                    what.isEmpty() ? progress.path("step").asText() : what,
                    progress.path("done").asInt(),
                    total);
        }
    }

    private static JsonNode latest(JsonNode run) {
        JsonNode attempts = run.path("attempts");
        return attempts.path(attempts.size() - 1);
    }

    private static boolean isOnItsWay(JsonNode run) {
        String state = latest(run).path("state").asText();
        return state.equals("queued") || state.equals("running");
    }

    private static void sleep(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Failure.fault("interrupted", "").because(e);
        }
    }

    String id() {
        return run.path("id").asText();
    }

    String analyzer() {
        return run.path("analyzer").asText();
    }

    String version() {
        return run.path("version").asText();
    }

    Map<String, String> parameters() {
        Map<String, String> parameters = new TreeMap<>();
        run.path("parameters")
                .properties()
                .forEach(one -> parameters.put(one.getKey(), one.getValue().asText()));
        return parameters;
    }

    String datasetHash() {
        return run.path("dataset").path("hash").asText();
    }

    /** The digest of what the latest attempt made. */
    String latestSha256() {
        return latest(run).path("sha256").asText();
    }

    /**
     * Ends early unless the latest attempt made a result.
     *
     * @throws Failure with the server's own words
     */
    ServerRun mustBeMade() {
        JsonNode attempt = latest(run);
        if (!attempt.path("state").asText().equals("done")) {
            throw notMade(attempt);
        }
        return this;
    }

    private static Failure notMade(JsonNode attempt) {
        return Failure.fault(
                "the server did not make it: " + attempt.path("state").asText() + ", "
                        + attempt.path("failure").asText(),
                "tableweather rerun starts it again on the same sessions");
    }

    /** The kept bytes. */
    byte[] result() throws IOException {
        return server.bytes("/api/v1/runs/" + id() + "/result", Map.of(), "application/json");
    }
}
