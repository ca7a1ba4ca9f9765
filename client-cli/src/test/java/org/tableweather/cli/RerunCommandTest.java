package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.RunId;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.digest.Sha256;

/** Against a hand-written server that keeps one run, honestly or not. */
class RerunCommandTest {
    private static final String ANALYZER = "rebound-humidity";
    private static final Map<String, String> PARAMETERS = Map.of("shot", "kick-3-rail");
    private static final Kept HONEST =
            Kept.of(AnalyzerCatalogue.discover().find(ANALYZER).orElseThrow());

    private HttpServer http;

    /** A run, its bytes, and the summaries of its sessions. */
    private record Kept(String version, String summaryVersion, String hash, byte[] result, byte[] summaries) {

        static <S> Kept of(Analyzer<S> analyzer) {
            try {
                Summaries<S> source = LocalSummaries.read(
                                analyzer, List.of(InventedFolders.of("elm"), InventedFolders.of("alder")), bytes -> {})
                        .source();
                ByteArrayOutputStream lines = new ByteArrayOutputStream();
                for (SessionSummary<S> session : source.sessions()) {
                    lines.write(SummaryJson.write(session));
                    lines.write('\n');
                }
                return new Kept(
                        analyzer.info().version(),
                        analyzer.info().summaryVersion(),
                        source.hash(),
                        AnalysisJson.bytes(AnalysisRun.conclude(analyzer, source, PARAMETERS)),
                        lines.toByteArray());
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }

        Kept with(byte[] otherResult) {
            return new Kept(version, summaryVersion, hash, otherResult, summaries);
        }

        Kept withVersion(String other) {
            return new Kept(other, summaryVersion, hash, result, summaries);
        }

        Kept withHash(String other) {
            return new Kept(version, summaryVersion, other, result, summaries);
        }

        String id() {
            return RunId.of(ANALYZER, version, PARAMETERS, hash);
        }

        String json(String state, String failure, byte[] made) {
            return """
                    {"id": "%s", "state": "done", "analyzer": "%s", "version": "%s",
                     "parameters": {"shot": "kick-3-rail"}, "dataset": {"hash": "%s", "sessions": 10},
                     "result": {"sha256": "%s"},
                     "attempts": [{"number": 1, "state": "interrupted"},
                                  {"number": 2, "state": "%s", "failure": "%s", "sha256": "%s"}]}
                    """.formatted(id(), ANALYZER, version, hash, Sha256.hex(result), state, failure, Sha256.hex(made));
        }
    }

    @BeforeEach
    void start() throws IOException {
        http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        http.start();
    }

    @AfterEach
    void stop() {
        http.stop(0);
    }

    private Ran rerun(Kept kept, byte[] made, String... more) {
        String run = "/api/v1/runs/" + kept.id();
        AtomicInteger asked = new AtomicInteger();
        answer(run + "/rerun", 202, () -> kept.json("queued", "", made));
        answer(run, 200, () -> kept.json(asked.incrementAndGet() < 3 ? "running" : "done", "", made));
        answer(run + "/result", 200, () -> new String(kept.result(), StandardCharsets.UTF_8));
        answer(run + "/summaries", 200, () -> new String(kept.summaries(), StandardCharsets.UTF_8));
        answer("/api/v1/analyzers/" + ANALYZER, 200, () -> "{\"summaryVersion\": \"" + kept.summaryVersion() + "\"}");
        return run(kept.id(), more);
    }

    private Ran run(String id, String... more) {
        String[] arguments = new String[4 + more.length];
        arguments[0] = "rerun";
        arguments[1] = id;
        arguments[2] = "--server";
        arguments[3] = "http://127.0.0.1:" + http.getAddress().getPort();
        System.arraycopy(more, 0, arguments, 4, more.length);
        return Ran.with(arguments);
    }

    @Test
    void verifiesTheSameBytesThereAndHere() {
        Ran ran = rerun(HONEST, HONEST.result());

        assertThat(ran.exitCode()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains("kept by the server:       sha256 " + Sha256.hex(HONEST.result()))
                .contains("made again by the server: the same bytes")
                .contains("made again here:          the same bytes")
                .endsWith("verified\n");
    }

    @Test
    void printsJson() {
        Ran ran = rerun(HONEST, HONEST.result(), "--json");

        assertThat(ran.out())
                .contains("\"verified\" : true")
                .contains("\"localSha256\" : \"" + Sha256.hex(HONEST.result()) + "\"");
    }

    @Test
    void endsWith1WhenTheServerMakesOtherBytesNow() {
        Ran ran = rerun(HONEST, new byte[] {1});

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.out())
                .contains("made again by the server: OTHER BYTES, sha256 " + Sha256.hex(new byte[] {1}))
                .contains("made again here:          the same bytes")
                .contains("NOT VERIFIED");
    }

    @Test
    void endsWith1WhenTheServerKeepsWhatItsSummariesDoNotGive() {
        String forged = new String(HONEST.result(), StandardCharsets.UTF_8)
                .replace("\"invented\" : true", "\"invented\" : false");
        byte[] result = forged.getBytes(StandardCharsets.UTF_8);

        Ran ran = rerun(HONEST.with(result), result);

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.out())
                .contains("made again by the server: the same bytes")
                .contains("made again here:          OTHER BYTES")
                .contains("kept  \"invented\" : false,  here  \"invented\" : true")
                .contains("NOT VERIFIED");
    }

    @Test
    void leavesItToTheServerWhenTheVersionsDiffer() {
        Ran ran = rerun(HONEST.withVersion("0.0.1"), HONEST.result());

        assertThat(ran.exitCode()).isZero();
        assertThat(ran.out()).contains("made again here:          not made: this program has rebound-humidity");
    }

    @Test
    void doesNotTrustSummariesOfOtherSessions() {
        Ran ran = rerun(HONEST.withHash("sha256:" + "0".repeat(64)), HONEST.result());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.err()).contains("do not trust its result");
    }

    @Test
    void doesNotTrustARunThatBearsAnotherName() {
        String other = "0".repeat(64);
        answer("/api/v1/runs/" + other + "/rerun", 202, () -> HONEST.json("done", "", HONEST.result()));

        Ran ran = run(other);

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.err()).contains("does not bear the name of its inputs");
    }

    @Test
    void tellsWhyTheServerDidNotMakeIt() {
        answer("/api/v1/runs/" + HONEST.id() + "/rerun", 202, () -> HONEST.json("failed", "out of luck", new byte[0]));

        Ran ran = run(HONEST.id());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.FAULT);
        assertThat(ran.err()).contains("did not make it: failed, out of luck");
    }

    @Test
    void tellsInTheServersWordsThatSessionsWereWithdrawn() {
        answer("/api/v1/runs/" + HONEST.id() + "/rerun", 409, () -> """
                {"title": "Sessions were withdrawn", "status": 409, "code": "sessions-withdrawn",
                 "detail": "2 of the 10 sessions were withdrawn"}""");

        Ran ran = run(HONEST.id());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.SERVER);
        assertThat(ran.err()).contains("2 of the 10 sessions were withdrawn");
    }

    @Test
    void wantsTheWholeName() {
        assertThat(run("3f0c").exitCode()).isEqualTo(ExitCodes.USAGE);
    }

    @FunctionalInterface
    private interface Text {
        String now();
    }

    private void answer(String path, int status, Text body) {
        http.createContext(path, exchange -> {
            boolean exact = exchange.getRequestURI().getPath().equals(path);
            byte[] bytes = body.now().getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders()
                    .set("Content-Type", status < 300 ? "application/json" : "application/problem+json");
            exchange.sendResponseHeaders(exact ? status : 404, bytes.length);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
    }
}
