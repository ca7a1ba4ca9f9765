package org.tableweather.server.analysis;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.RunId;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** On a server that makes one analysis at a time and lets two more wait, of one caller two in all. */
@QuarkusTest
@TestProfile(RunsTest.OneAtATime.class)
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
class RunsTest {
    private static final String ANALYZER = "rebound-humidity";
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final long PATIENCE_MILLIS = 60_000;

    @Inject
    DataSource database;

    @TestHTTPResource("/")
    URI server;

    /** A server with the smallest queue. */
    public static final class OneAtATime implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of(
                    "tableweather.runs.concurrent", "1",
                    "tableweather.runs.waiting", "2",
                    "tableweather.runs.per-caller", "2");
        }
    }

    private static int contribute(String who) {
        return Tokens.as(Tokens.of(who, "contributor", "contribute"))
                .contentType("application/zip")
                .body(Examples.archive(who))
                .post("/api/v1/contributions")
                .then()
                .statusCode(201)
                .extract()
                .path("id");
    }

    private static Response ask(Map<String, String> parameters) {
        return ask(given(), parameters);
    }

    private static Response ask(RequestSpecification caller, Map<String, String> parameters) {
        return caller.contentType("application/json")
                .body(Map.of("analyzer", ANALYZER, "parameters", parameters))
                .post("/api/v1/analyses");
    }

    private static String idOf(Response response) {
        return response.then()
                .header("Location", containsString("/api/v1/runs/"))
                .extract()
                .path("id");
    }

    private static String path(String id) {
        return "/api/v1/runs/" + id;
    }

    /** The run, when no attempt is on its way. */
    private static JsonPath ended(String id) throws InterruptedException {
        long patienceEnds = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (System.currentTimeMillis() < patienceEnds) {
            JsonPath run =
                    given().get(path(id)).then().statusCode(200).extract().jsonPath();
            String state = run.getString("attempts[-1].state");
            if (!state.equals("queued") && !state.equals("running")) {
                return run;
            }
            Thread.sleep(20);
        }
        throw new AssertionError("run " + id + " is still on its way");
    }

    private static String made(Map<String, String> parameters) throws InterruptedException {
        String id = idOf(ask(parameters));
        assertThat(ended(id).getString("state")).isEqualTo("done");
        return id;
    }

    private static byte[] result(String id) {
        return given().get(path(id) + "/result")
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    private static ValidatableResponse isProblem(Response response, int status, String code) {
        return response.then()
                .statusCode(status)
                .contentType(startsWith("application/problem+json"))
                .body("code", equalTo(code));
    }

    @Test
    void keepsTheVeryBytesUnderANameMadeOfTheInputs() throws InterruptedException {
        contribute("keeps");
        byte[] asked = given().get("/api/v1/analyses/" + ANALYZER + "?shot=kick-3-rail")
                .then()
                .extract()
                .asByteArray();
        String id = made(Map.of("shot", "kick-3-rail"));

        assertThat(result(id)).isEqualTo(asked);
        Response again = ask(Map.of("shot", "kick-3-rail"));
        again.then().statusCode(200).body("id", equalTo(id)).body("attempts", hasSize(1));
        JsonPath run = again.jsonPath();
        assertThat(RunId.of(
                        ANALYZER, run.getString("version"), run.getMap("parameters"), run.getString("dataset.hash")))
                .isEqualTo(id);
        String response = run.getString("parameters.response");
        assertThat(idOf(ask(Map.of("shot", "kick-3-rail", "response", response))))
                .as("a standard value that is written out is the same question")
                .isEqualTo(id);
        String tag = given().get(path(id) + "/result").header("ETag");
        assertThat(tag).isEqualTo("\"" + run.getString("result.sha256") + "\"");
        given().header("If-None-Match", tag).get(path(id) + "/result").then().statusCode(304);
    }

    @Test
    void isMadeAgainOnItsOwnSessionsAfterMoreCame() throws Exception {
        contribute("first-come");
        String id = made(Map.of());
        byte[] before = result(id);
        contribute("later-come");

        assertThat(made(Map.of())).as("other sessions are another run").isNotEqualTo(id);
        given().post(path(id) + "/rerun").then().statusCode(202).header("Location", containsString(path(id)));
        JsonPath run = ended(id);

        assertThat(run.getString("attempts[-1].state")).isEqualTo("done");
        assertThat(run.getInt("attempts[-1].number")).isEqualTo(2);
        assertThat(run.getBoolean("attempts[-1].sameBytes")).isTrue();
        assertThat(result(id)).isEqualTo(before);
        Analyzer<?> analyzer = AnalyzerCatalogue.discover().find(ANALYZER).orElseThrow();
        assertThat(fromSummaries(analyzer, id)).isEqualTo(before);
        given().get(path(id) + "/sessions")
                .then()
                .statusCode(200)
                .body("hash", equalTo(run.getString("dataset.hash")))
                .body("digests", hasSize(run.getInt("dataset.sessions")))
                .body("withdrawn", hasSize(0));
    }

    private static <S> byte[] fromSummaries(Analyzer<S> analyzer, String id) throws IOException {
        String lines = given().get(path(id) + "/summaries")
                .then()
                .statusCode(200)
                .contentType(startsWith("application/x-ndjson"))
                .extract()
                .asString();
        List<SessionSummary<S>> summaries = new ArrayList<>();
        for (String line : lines.lines().toList()) {
            JsonNode session = JSON.readTree(line);
            summaries.add(new SessionSummary<>(
                    session.path("roomKey").asText(),
                    session.path("sessionKey").asText(),
                    session.path("digest").asText(),
                    session.path("invented").asBoolean(),
                    session.path("trials").asLong(),
                    SummaryJson.read(
                            session.path("summary").toString().getBytes(StandardCharsets.UTF_8),
                            analyzer.summaryType())));
        }
        return AnalysisJson.bytes(AnalysisRun.conclude(analyzer, Summaries.of(summaries), Map.of()));
    }

    @Test
    void saysThatSessionsWereWithdrawn() throws InterruptedException {
        int contribution = contribute("goes-away");
        String id = made(Map.of());
        Tokens.as(Tokens.of("tidy", "curator", "curate"))
                .post("/api/v1/contributions/" + contribution + "/withdraw")
                .then()
                .statusCode(200);

        isProblem(given().post(path(id) + "/rerun"), 409, "sessions-withdrawn")
                .body("withdrawn", hasSize(2))
                .body("detail", containsString("2 of the "));
        isProblem(given().get(path(id) + "/summaries"), 409, "sessions-withdrawn");
        given().get(path(id) + "/sessions").then().body("withdrawn", hasSize(2));
        assertThat(result(id)).as("what was kept stays").isNotEmpty();
    }

    @Test
    @Timeout(120)
    void boundsWhatIsMadeAndWhatWaitsAndCancelsBoth() throws Exception {
        contribute("crowd");
        String first;
        String second;
        Stream<String> events;
        try (Connection holder = summariesHeld()) {
            first = idOf(ask(Map.of("curve_from_pct", "31")));
            awaitState(first, "running");
            second = idOf(ask(Map.of("curve_from_pct", "32")));
            given().get(path(second)).then().body("state", equalTo("queued"));
            assertThat(idOf(ask(Map.of("curve_from_pct", "32"))))
                    .as("asked twice, it waits once")
                    .isEqualTo(second);
            isProblem(ask(Map.of("curve_from_pct", "33")), 429, "too-many-runs")
                    .header("Retry-After", equalTo("10"))
                    .body("detail", containsString("you asked for"));
            isProblem(given().get("/api/v1/analyses/" + ANALYZER + "?curve_from_pct=33"), 429, "too-many-runs");
            String owner = Tokens.of("owner", "contributor", "contribute");
            String others = idOf(ask(Tokens.as(owner), Map.of("curve_from_pct", "33")));
            String stranger = Tokens.of("stranger", "contributor", "contribute");
            isProblem(ask(Tokens.as(stranger), Map.of("curve_from_pct", "36")), 429, "too-many-runs")
                    .body("detail", containsString("2 wait"));
            isProblem(given().delete(path(others)), 401, "not-authenticated");
            isProblem(Tokens.as(stranger).delete(path(others)), 403, "not-yours");
            Tokens.as(owner).delete(path(others)).then().statusCode(200).body("state", equalTo("cancelled"));
            others = idOf(ask(Tokens.as(owner), Map.of("curve_from_pct", "33")));
            Tokens.as(Tokens.operator()).delete(path(others)).then().statusCode(200);

            given().delete(path(second)).then().statusCode(200).body("state", equalTo("cancelled"));
            String third = idOf(ask(Map.of("curve_from_pct", "34")));
            given().delete(path(third)).then().statusCode(200);
            isProblem(given().get(path(third) + "/result"), 409, "wrong-state")
                    .body("detail", containsString("cancelled"));
            events = watch(first);
            given().delete(path(first))
                    .then()
                    .statusCode(200)
                    .body("state", equalTo("cancelled"))
                    .body("result", nullValue());
            holder.rollback();
        }
        assertThat(events).last().asString().contains("\"state\":\"cancelled\"");
        isProblem(given().delete(path(first)), 409, "wrong-state");
        given().post(path(first) + "/rerun").then().statusCode(202);
        assertThat(ended(first).getString("state")).as("can be started again").isEqualTo("done");
    }

    @Test
    @Timeout(240)
    void aCancelledConclusionStops() throws Exception {
        for (int room = 0; room < 8; room++) {
            contribute("long-" + room);
        }
        String id = idOf(ask(Map.of("bootstrap", "10000")));
        long patienceEnds = System.currentTimeMillis() + PATIENCE_MILLIS;
        JsonPath running = given().get(path(id)).jsonPath();
        while (!"bootstrap".equals(running.getString("progress.what"))) {
            assertThat(System.currentTimeMillis()).isLessThan(patienceEnds);
            running = given().get(path(id)).jsonPath();
        }
        assertThat(running.getString("progress.step")).isEqualTo("concluding");
        assertThat(running.getInt("progress.total")).isEqualTo(10_000);
        assertThat(running.getInt("progress.done")).isLessThan(10_000);

        given().delete(path(id)).then().statusCode(200).body("state", equalTo("cancelled"));

        assertThat(made(Map.of("curve_from_pct", "37")))
                .as("the one worker is free again")
                .isNotEqualTo(id);
        given().get(path(id)).then().body("state", equalTo("cancelled")).body("result", nullValue());
    }

    @Test
    void listsTheRunsPageByPage() throws InterruptedException {
        contribute("listed");
        String first = made(Map.of("curve_from_pct", "38"));
        String second = made(Map.of("curve_from_pct", "39"));

        JsonPath page = given().get("/api/v1/runs?limit=1")
                .then()
                .statusCode(200)
                .extract()
                .jsonPath();
        assertThat(page.getString("runs[0].id")).isEqualTo(second);
        assertThat(page.getString("runs[0].state")).isEqualTo("done");
        assertThat(page.getString("runs[0].result.address")).isEqualTo(path(second) + "/result");
        List<String> all = new ArrayList<>(page.getList("runs.id"));
        while (page.getString("next") != null) {
            page = given().get("/api/v1/runs?limit=1&after=" + page.getString("next"))
                    .jsonPath();
            all.addAll(page.getList("runs.id"));
        }
        assertThat(all).startsWith(second, first).doesNotHaveDuplicates();
        assertThat(given().get("/api/v1/runs?limit=1000").jsonPath().getList("runs.id", String.class))
                .containsExactlyElementsOf(all);
        given().get("/api/v1/runs?analyzer=nobody").then().statusCode(200).body("runs", hasSize(0));
        isProblem(given().get("/api/v1/runs?after=x"), 400, "bad-request");
        isProblem(given().get("/api/v1/runs?limit=0"), 400, "bad-request");
        isProblem(given().get("/api/v1/runs?colour=green"), 400, "unknown-parameter");
    }

    @Test
    void keepsWhatWasAskedForWithATokenAndTheLatestOfTheRest() throws Exception {
        contribute("kept");
        String nobodys = made(Map.of("curve_from_pct", "41"));
        String latest = made(Map.of("curve_from_pct", "42"));
        String token = Tokens.of("keeper", "contributor", "contribute");
        String owned = idOf(ask(Tokens.as(token), Map.of("curve_from_pct", "43")));
        ended(owned);

        new KeptRuns(database, JSON, Clock.systemUTC(), 1, 0).forget();
        given().get(path(nobodys)).then().statusCode(404);
        given().get(path(latest)).then().statusCode(200);
        given().get(path(owned)).then().statusCode(200);

        new KeptRuns(database, JSON, Clock.offset(Clock.systemUTC(), Duration.ofDays(8)), 1, 9).forget();
        given().get(path(owned)).then().statusCode(200);
        new KeptRuns(database, JSON, Clock.offset(Clock.systemUTC(), Duration.ofDays(8)), 1, 7).forget();
        given().get("/api/v1/runs").then().body("runs", hasSize(0));
        assertThat(count("SELECT count(*) FROM session_set")).isZero();
        assertThat(count("SELECT count(*) FROM run_attempt")).isZero();
    }

    private long count(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement select = connection.createStatement();
                ResultSet row = select.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    @Test
    @Timeout(120)
    void streamsWhatBecomesOfARun() throws Exception {
        contribute("watched");
        Stream<String> events;
        try (Connection holder = summariesHeld()) {
            String id = idOf(ask(Map.of("curve_from_pct", "35")));
            awaitState(id, "running");
            events = watch(id);
            holder.rollback();
        }
        List<String> later = events.toList();
        assertThat(later).anyMatch(data -> data.contains("\"step\":\"summarising\""));
        assertThat(later).anyMatch(data -> data.contains("\"step\":\"concluding\""));
        assertThat(JSON.readTree(later.get(later.size() - 1)).path("state").asText())
                .isEqualTo("done");
    }

    /** What comes after the first event, which tells that the run is being made. */
    private Stream<String> watch(String id) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(server.resolve(path(id) + "/events"))
                .header("Accept", "text/event-stream")
                .build();
        HttpResponse<InputStream> stream =
                HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofInputStream());
        assertThat(stream.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/event-stream");
        BufferedReader lines = new BufferedReader(new InputStreamReader(stream.body(), StandardCharsets.UTF_8));
        assertThat(JSON.readTree(data(lines.readLine())).path("state").asText()).isEqualTo("running");
        return lines.lines().filter(line -> line.startsWith("data:")).map(RunsTest::data);
    }

    private static String data(String line) {
        return line.substring("data:".length());
    }

    private static void awaitState(String id, String state) throws InterruptedException {
        long patienceEnds = System.currentTimeMillis() + PATIENCE_MILLIS;
        while (!given().get(path(id)).path("state").equals(state)) {
            assertThat(System.currentTimeMillis()).isLessThan(patienceEnds);
            Thread.sleep(20);
        }
    }

    /** While it is open, nobody can read or keep summaries, so an analysis of something new cannot go on. */
    private Connection summariesHeld() throws SQLException {
        Connection holder = database.getConnection();
        holder.setAutoCommit(false);
        try (Statement lock = holder.createStatement()) {
            lock.execute("LOCK TABLE session_summary IN ACCESS EXCLUSIVE MODE");
        }
        return holder;
    }

    @Test
    void tellsWhenTheBytesAreOthersAndWhenTheAnalyzerIs() throws Exception {
        contribute("changed");
        String id = made(Map.of());
        change("UPDATE analysis_run SET result = '{}', result_sha256 = repeat('0', 64) WHERE id = ?", id);
        given().post(path(id) + "/rerun").then().statusCode(202);
        assertThat(ended(id).getBoolean("attempts[-1].sameBytes")).isFalse();

        change("UPDATE analysis_run SET analyzer_version = '0.0.1' WHERE id = ?", id);
        isProblem(given().post(path(id) + "/rerun"), 409, "analyzer-changed")
                .body("detail", containsString(ANALYZER + " 0.0.1"));
        change("UPDATE analysis_run SET analyzer_id = 'gone' WHERE id = ?", id);
        isProblem(given().post(path(id) + "/rerun"), 409, "analyzer-changed")
                .body("detail", containsString("no such analyzer"));
        change("DELETE FROM run_attempt WHERE run_id = ?", id);
        change("DELETE FROM analysis_run WHERE id = ?", id);
    }

    private void change(String sql, String id) throws SQLException {
        try (Connection connection = database.getConnection();
                PreparedStatement update = connection.prepareStatement(sql)) {
            update.setString(1, id);
            assertThat(update.executeUpdate()).isPositive();
        }
    }

    @Test
    void refusesWhatCannotBeAsked() throws InterruptedException {
        contribute("asked");
        isProblem(
                given().contentType("application/json")
                        .body(Map.of("analyzer", "nobody"))
                        .post("/api/v1/analyses"),
                404,
                "not-found");
        isProblem(given().contentType("application/json").body("{}").post("/api/v1/analyses"), 400, "invalid-field");
        isProblem(ask(Map.of("colour", "green")), 400, "unknown-parameter");
        isProblem(ask(Map.of("response", "colour")), 400, "bad-request");
        isProblem(given().get(path("0".repeat(64))), 404, "not-found");
        isProblem(given().get(path("0".repeat(64)) + "/events"), 404, "not-found");
        isProblem(given().post(path("0".repeat(64)) + "/rerun"), 404, "not-found");
        isProblem(given().get(path("short")), 404, "not-found");
        JsonPath failed = ended(idOf(ask(Map.of("curve_from_pct", "140"))));
        assertThat(failed.getString("state")).isEqualTo("failed");
        assertThat(failed.getString("attempts[0].failure")).contains("curve_from_pct");
    }
}
