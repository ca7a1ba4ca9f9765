package org.tableweather.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/** The session summaries that a server keeps, one JSON document a line. */
final class ServerSummaries {
    private static final String MEDIA_TYPE = "application/x-ndjson";

    private ServerSummaries() {}

    /**
     * Fetches all summaries for an analyzer.
     *
     * @throws Failure when the server keeps summaries of another version than this program's analyzer makes
     */
    static <S> List<SessionSummary<S>> fetch(ServerClient server, Analyzer<S> analyzer) throws IOException {
        return fetch(server, analyzer, about(analyzer) + "/summaries");
    }

    /** Fetches the summaries of the sessions that were recorded with a run. */
    static <S> List<SessionSummary<S>> ofRun(ServerClient server, Analyzer<S> analyzer, String run) throws IOException {
        return fetch(server, analyzer, "/api/v1/runs/" + run + "/summaries");
    }

    private static String about(Analyzer<?> analyzer) {
        return "/api/v1/analyzers/" + ServerClient.encoded(analyzer.info().id());
    }

    private static <S> List<SessionSummary<S>> fetch(ServerClient server, Analyzer<S> analyzer, String path)
            throws IOException {
        mustAgree(server.get(about(analyzer), Map.of()).path("summaryVersion").asText(), analyzer.info());
        List<SessionSummary<S>> summaries = new ArrayList<>();
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(server.stream(path, Map.of(), MEDIA_TYPE), StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (!line.isBlank()) {
                    summaries.add(summary(JsonText.tree(line.getBytes(StandardCharsets.UTF_8)), analyzer));
                }
            }
        }
        return summaries;
    }

    private static <S> SessionSummary<S> summary(JsonNode line, Analyzer<S> analyzer) throws IOException {
        return new SessionSummary<>(
                line.path("roomKey").asText(),
                line.path("sessionKey").asText(),
                line.path("digest").asText(),
                line.path("invented").asBoolean(),
                line.path("trials").asLong(),
                SummaryJson.read(
                        line.path("summary").toString().getBytes(StandardCharsets.UTF_8), analyzer.summaryType()));
    }

    private static void mustAgree(String theirs, AnalyzerInfo ours) {
        if (!theirs.equals(ours.summaryVersion())) {
            throw Failure.server(
                    "the server's summaries are of version " + theirs + ", this program's of " + ours.summaryVersion(),
                    "use the same release here and there");
        }
    }
}
