package org.tableweather.server.plugin;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.plugin.PluginJar;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** A server with added analyzers, most of them hostile: each fails alone, and the server goes on. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
@QuarkusTestResource(value = PluginFolder.class, restrictToAnnotatedClass = true)
class HostilePluginsTest {

    @TempDir
    Path root;

    @Test
    void theGoodJarAnswersTheHostileOnesFailAndTheServerGoesOn() throws Exception {
        Path folder = contributed();

        onlyWhatIsPinnedSoundAndNewIsLoaded();
        theExampleAnswersAsInTheCommand(folder);
        given().get("/api/v1/analyses/loud")
                .then()
                .statusCode(200)
                .body("outcome", equalTo("estimated"))
                .body("estimates[0].value", equalTo(14.0f));

        fails("endless", "endless.jar took longer than 15 s and was ended");
        fails("greedy", "java.lang.OutOfMemoryError");
        fails("leaver", "leaver.jar ended its process (exit code 0) without a reply");
        fails("thrower", "the analyzer thrower 1.0.0 of thrower.jar threw in conclude: java.lang.Error: ouch");
        fails("silent", "the analyzer silent 1.0.0 of silent.jar returned null from conclude");
        fails("vague", "not finite, in estimates[0].value = NaN");

        aRunTellsWhatTheJarDid("thrower", "threw in conclude: java.lang.Error: ouch");

        given().get("/health/ready").then().statusCode(200);
        given().get("/api/v1/analyses/rebound-humidity").then().statusCode(200);
        theExampleAnswersAsInTheCommand(folder);
    }

    private static void onlyWhatIsPinnedSoundAndNewIsLoaded() {
        given().get("/api/v1/analyzers")
                .then()
                .statusCode(200)
                .body("analyzers.id", hasItems("rebound-humidity", "speed-kept", "loud", "endless"))
                .body("analyzers.findAll { it.id == 'rebound-humidity' }", hasSize(1))
                .body("analyzers.find { it.id == 'rebound-humidity' }.title", not(equalTo("Counting")))
                .body("analyzers.id", not(hasItem("unpinned")));
        given().get("/api/v1/analyses/unpinned").then().statusCode(404);
    }

    /** The very bytes, though one runs in this process and the other in one of its own. */
    private void theExampleAnswersAsInTheCommand(Path folder) throws Exception {
        Path jar = OutsideJar.example().writeTo(root.resolve("cushion.jar"));
        String local = local(PluginJar.analyzers(jar).get(0), folder);

        assertThat(given().get("/api/v1/analyses/speed-kept")
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .isEqualTo(local);
        // 7 sessions from 2 m/s to 1.1 ... 1.7 m/s
        assertThat(local).contains("A ball keeps 0.700 of its speed at the first rail (0.550 to 0.850).");
    }

    private static <S> String local(Analyzer<S> analyzer, Path folder) throws Exception {
        LocalSummaries<S> summaries = LocalSummaries.read(analyzer, List.of(folder), bytes -> {});
        return new String(
                AnalysisJson.bytes(AnalysisRun.conclude(analyzer, summaries.source(), Map.of())),
                StandardCharsets.UTF_8);
    }

    private static void fails(String id, String said) {
        given().get("/api/v1/analyses/" + id)
                .then()
                .statusCode(500)
                .contentType("application/problem+json")
                .body("code", equalTo("plugin-failed"))
                .body("detail", containsString(said));
    }

    private static void aRunTellsWhatTheJarDid(String id, String said) throws InterruptedException {
        String address = given().contentType("application/json")
                .body(Map.of("analyzer", id))
                .post("/api/v1/analyses")
                .then()
                .statusCode(202)
                .extract()
                .header("Location");
        long patienceEnds = System.currentTimeMillis() + 120_000;
        String state = "";
        while (!state.equals("failed") && System.currentTimeMillis() < patienceEnds) {
            Thread.sleep(50);
            state = given().get(address).path("state");
        }
        given().get(address).then().body("state", equalTo("failed")).body("attempts[0].failure", containsString(said));
    }

    private Path contributed() throws Exception {
        Path folder = speeds().writeTo(root.resolve("speeds"));
        Path archive = root.resolve("speeds.zip");
        ContributionWriter.pack(folder, archive);
        Tokens.as(Tokens.of("speeds", "contributor", "contribute"))
                .contentType("application/zip")
                .body(Files.readAllBytes(archive))
                .post("/api/v1/contributions")
                .then()
                .statusCode(201)
                .body("state", equalTo("accepted"));
        return folder;
    }

    /** Seven sessions of two attempts: from 2 m/s to 1.1, 1.2, ... 1.7 m/s. */
    private static ExampleFolder speeds() {
        StringBuilder sessions = new StringBuilder();
        StringBuilder trials = new StringBuilder("session,trial,kind,shot,temp_c,rh_pct,approach_angle_deg,"
                + "rebound_angle_deg,approach_speed_mps,rebound_speed_mps\n");
        for (int session = 1; session <= 7; session++) {
            sessions.append(session == 1 ? "" : ", ").append("{\"id\": \"s%d\", \"table\": \"t1\"}".formatted(session));
            for (int trial = 1; trial <= 2; trial++) {
                trials.append(
                        "s%d,%d,rebound,rebound-45-ramp,21,50,45,43,2.0,1.%d\n".formatted(session, trial, session));
            }
        }
        String contribution = """
                {"schemaVersion": "1.0", "title": "Speeds", "licence": "CC0-1.0", "invented": true,
                 "contributor": {"name": "speeds"}, "rooms": [{"id": "cellar"}],
                 "tables": [{"id": "t1", "room": "cellar", "playingLengthMm": 2540, "playingWidthMm": 1270}],
                 "sessions": [%s]}
                """.formatted(sessions);
        return ExampleFolder.sound()
                .remove("climate.csv")
                .put("contribution.json", contribution)
                .put("trials.csv", trials.toString());
    }
}
