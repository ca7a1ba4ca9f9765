package org.tableweather.server.journey;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;
import static org.tableweather.server.Tokens.as;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.host.SummaryJson;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.server.SampleLeague;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** One whole story on a curated server of its own: nothing, contributed, accepted, analysed, shown, withdrawn. */
@QuarkusTest
@TestProfile(ContributeToCurveTest.Curated.class)
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
class ContributeToCurveTest {
    private static final String ANALYSIS = "/api/v1/analyses/rebound-humidity";

    @TempDir
    Path root;

    /** A server where a curator has the last word. */
    public static final class Curated implements QuarkusTestProfile {
        @Override
        public Map<String, String> getConfigOverrides() {
            return Map.of("tableweather.acceptance", "curated");
        }
    }

    @Test
    void fromAnEmptyServerToACurveAndBack() throws IOException {
        given().get("/").then().statusCode(200).body(containsString("Nothing has been contributed yet"));
        given().get(ANALYSIS).then().statusCode(200).body("outcome", equalTo("declined"));

        List<Path> folders = SampleLeague.writeTo(root);
        String curator = Tokens.of("curator", "curator", "curate");
        List<Integer> ids = new ArrayList<>();
        for (int room = 0; room < SampleLeague.ROOMS; room++) {
            ids.add(contribute(room, folders.get(room)));
        }
        given().get("/api/v1/trials").then().body("trials", hasSize(0));
        String owner =
                Tokens.as(curator).get("/api/v1/accounts/me").then().extract().path("account.name");
        assertThat(owner).isEqualTo("curator");
        for (int id : ids) {
            as(curator)
                    .post("/api/v1/contributions/" + id + "/accept")
                    .then()
                    .statusCode(200)
                    .body("state", equalTo("accepted"));
        }
        as(curator)
                .post("/api/v1/contributions/" + ids.get(0) + "/accept")
                .then()
                .statusCode(409);

        isTheSameAsLocally(folders, Map.of());
        isTheSameAsLocally(folders, Map.of("shot", "kick-3-rail", "curve_from_pct", "35", "curve_to_pct", "60"));
        isTheSameAsLocally(folders, Map.of("shot", "nobody-shot-this"));
        summariesAreTheSameAsLocally(folders);
        parametersAreChecked();
        thePageShowsTheCurve();

        as(curator)
                .post("/api/v1/contributions/" + ids.get(2) + "/withdraw")
                .then()
                .statusCode(200);
        List<Path> left = new ArrayList<>(folders);
        left.remove(2);
        isTheSameAsLocally(left, Map.of());
    }

    private int contribute(int room, Path folder) throws IOException {
        Path archive = root.resolve(room + ".zip");
        ContributionWriter.pack(folder, archive);
        String token = Tokens.of(SampleLeague.contributor(room), "contributor", "contribute");
        int id = as(token)
                .contentType("application/zip")
                .body(Files.readAllBytes(archive))
                .post("/api/v1/contributions")
                .then()
                .statusCode(201)
                .body("state", equalTo("checked"))
                .extract()
                .path("id");
        as(token)
                .post("/api/v1/contributions/" + id + "/accept")
                .then()
                .statusCode(403)
                .body("code", equalTo("missing-scope"));
        return id;
    }

    /** Byte for byte what the command prints for the same folders. */
    private static void isTheSameAsLocally(List<Path> folders, Map<String, String> parameters) throws IOException {
        Analyzer<?> analyzer =
                AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow();
        String local = new String(AnalysisJson.bytes(locally(analyzer, folders, parameters)), StandardCharsets.UTF_8);
        assertThat(given().queryParams(parameters)
                        .get(ANALYSIS)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .isEqualTo(local);
        // from the cache, and by the other method
        assertThat(given().contentType("application/json")
                        .body(Map.of("parameters", parameters))
                        .post(ANALYSIS)
                        .then()
                        .statusCode(200)
                        .extract()
                        .asString())
                .isEqualTo(local);
        ObjectNode brief = (ObjectNode) new ObjectMapper().readTree(local);
        brief.remove(List.of("rooms", "plots"));
        byte[] curve = given().queryParams(parameters).get(ANALYSIS + "/curve").asByteArray();
        assertThat(new ObjectMapper().readTree(curve)).isEqualTo(brief);
    }

    private static <S> AnalysisRun locally(Analyzer<S> analyzer, List<Path> folders, Map<String, String> parameters)
            throws IOException {
        LocalSummaries<S> summaries = LocalSummaries.read(analyzer, folders, bytes -> {});
        assertThat(summaries.isRefused()).isFalse();
        return AnalysisRun.conclude(analyzer, summaries.source(), new TreeMap<>(parameters));
    }

    private static void summariesAreTheSameAsLocally(List<Path> folders) throws IOException {
        Analyzer<?> analyzer =
                AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow();
        StringBuilder lines = new StringBuilder();
        for (SessionSummary<?> session :
                LocalSummaries.read(analyzer, folders, bytes -> {}).source().sessions()) {
            lines.append(new String(SummaryJson.write(session), StandardCharsets.UTF_8))
                    .append('\n');
        }
        assertThat(given().get("/api/v1/analyzers/rebound-humidity/summaries")
                        .then()
                        .statusCode(200)
                        .contentType(startsWith("application/x-ndjson"))
                        .extract()
                        .asString())
                .isEqualTo(lines.toString());
    }

    private static void parametersAreChecked() {
        given().get("/api/v1/analyzers").then().statusCode(200).body("analyzers.id", hasItem("rebound-humidity"));
        given().get("/api/v1/analyzers/rebound-humidity")
                .then()
                .statusCode(200)
                .body("parameters.name", hasItem("shot"));
        given().get(ANALYSIS + "?colour=green")
                .then()
                .statusCode(400)
                .body("code", equalTo("unknown-parameter"))
                .body("detail", containsString("shot"));
        given().get(ANALYSIS + "?response=colour")
                .then()
                .statusCode(400)
                .body("code", equalTo("bad-request"))
                .body("detail", containsString("landing"));
        given().get(ANALYSIS + "?curve_from_pct=140").then().statusCode(400).body("code", equalTo("bad-request"));
        given().get(ANALYSIS + "?shot=a&shot=b").then().statusCode(400);
        given().get("/api/v1/analyses/nobody").then().statusCode(404);
    }

    private static void thePageShowsTheCurve() {
        String tag = given().get("/")
                .then()
                .statusCode(200)
                .contentType(startsWith("text/html"))
                .header("Content-Security-Policy", startsWith("default-src 'none'"))
                .body(containsString("<svg"))
                .body(containsString("<strong>Invented data.</strong>"))
                .body(containsString("5 rooms, 20 sessions, 240 attempts"))
                .body(containsString("kick-3-rail"))
                .body(containsString("league-4/hall"))
                .body(not(matchesPattern("(?s).*<script(?![^>]* src=\"/assets/).*")))
                .body(not(containsString(" style=")))
                .extract()
                .header("ETag");
        given().header("If-None-Match", tag).get("/").then().statusCode(304);
        given().get("/tableweather.css").then().statusCode(200).contentType(startsWith("text/css"));
    }
}
