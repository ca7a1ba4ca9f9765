package org.tableweather.server.catalogue;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.startsWith;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.release.TrialParquet;
import org.tableweather.schema.record.Trial;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/**
 * Filters, forms, counts and saved queries over the example contribution: two sessions of fifteen trials, at 38 to 41 % and at 55 to 58 %,
 * both warming from 20.00 °C; the cloth is 85 % wool and 15 % nylon.
 */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class TrialFormsTest {
    private static final String ROOM = "forms/cellar";
    private static String token;

    @BeforeEach
    void contribute() {
        if (token == null) {
            token = Tokens.of("forms", "contributor", "contribute");
            Tokens.as(token)
                    .contentType("application/zip")
                    .body(Examples.archive("forms"))
                    .post("/api/v1/contributions")
                    .then()
                    .statusCode(201);
        }
    }

    private static List<NamedCsvRecord> csv(String filter) {
        String text = given().get("/api/v1/trials?format=csv&room=" + ROOM + filter)
                .then()
                .statusCode(200)
                .extract()
                .asString();
        return CsvReader.builder().ofNamedCsvRecord(text).stream().toList();
    }

    private static List<JsonNode> lines(String filter) throws IOException {
        String text = given().get("/api/v1/trials?format=ndjson&room=" + ROOM + filter)
                .then()
                .statusCode(200)
                .contentType(startsWith("application/x-ndjson"))
                .extract()
                .asString();
        List<JsonNode> rows = new ArrayList<>();
        for (String line : text.lines().toList()) {
            rows.add(new ObjectMapper().readTree(line));
        }
        return rows;
    }

    private static List<Trial> parquet(String filter, Path folder) throws IOException {
        byte[] file = given().accept("application/vnd.apache.parquet")
                .get("/api/v1/trials?room=" + ROOM + filter)
                .then()
                .statusCode(200)
                .contentType("application/vnd.apache.parquet")
                .extract()
                .asByteArray();
        Path path = Files.write(folder.resolve("trials.parquet"), file);
        List<Trial> trials = new ArrayList<>();
        TrialParquet.sessions(path, (session, rows) -> trials.addAll(rows));
        return trials;
    }

    /** Every form gives the same rows; and a page of JSON as many. */
    private static int rows(String filter, Path folder) throws IOException {
        List<String> ids = csv(filter).stream()
                .map(row -> row.getField("session_key") + row.getField("trial"))
                .toList();
        assertThat(lines(filter).stream()
                        .map(row -> row.path("sessionKey").asText()
                                + row.path("trial").asText())
                        .toList())
                .as(filter)
                .isEqualTo(ids);
        assertThat(parquet(filter, folder).stream()
                        .map(trial -> ROOM + "/" + trial.session() + trial.trial())
                        .toList())
                .as(filter)
                .containsExactlyInAnyOrderElementsOf(ids);
        given().get("/api/v1/trials/summary?room=" + ROOM + filter)
                .then()
                .statusCode(200)
                .body("trials", equalTo(ids.size()));
        given().get("/api/v1/trials?limit=1000&room=" + ROOM + filter).then().body("trials", hasSize(ids.size()));
        return ids.size();
    }

    @Test
    void everyFormAndTheCountsTakeEveryFilter(@TempDir Path folder) throws IOException {
        assertThat(rows("", folder)).isEqualTo(30);
        assertThat(rows("&shot=rebound-30-ramp", folder)).isEqualTo(10);
        assertThat(rows("&country=no", folder)).isEqualTo(30);
        assertThat(rows("&country=SE", folder)).isZero();
        assertThat(rows("&contributor=forms", folder)).isEqualTo(30);
        assertThat(rows("&contributor=form", folder)).isZero();
        assertThat(rows("&playingLengthFrom=2000&playingLengthTo=2600", folder)).isEqualTo(30);
        assertThat(rows("&playingLengthFrom=2600", folder)).isZero();
        assertThat(rows("&woolFrom=85&woolTo=85", folder)).isEqualTo(30);
        assertThat(rows("&woolTo=84.9", folder)).isZero();
        assertThat(rows("&clothAgeFrom=0", folder)).isIn(0, 30);
        assertThat(rows("&rhFrom=50", folder)).isEqualTo(15);
        assertThat(rows("&severityTo=warn", folder)).isEqualTo(30);
        assertThat(rows("&severityFrom=note", folder) + rows("&severityTo=none", folder))
                .isEqualTo(30);
        assertThat(rows("&from=2026-01-12T17:07:00Z&to=2026-01-12T17:11:00Z", folder))
                .isEqualTo(2);
        assertThat(rows("&tempFrom=20.1&tempTo=20.12", folder)).isEqualTo(2);
    }

    /**
     * Each bound cuts through the first session, whose trials are told apart by their own air. At 20.1 °C saturation is
     * 2353 Pa and 17.4 g/m³ (psychrometric tables), so 39.5 % is about 929 Pa, 6.9 g/m³, 5.8 g/kg and a dew point near 6 °C;
     * wool holds about 11 % of its dry mass at 40 % and 14 % at 55 %, nylon 2.5 % and 3.3 % (textbooks of fibres, from memory).
     */
    @Test
    void measuresOfHumidityAreTestedTrialByTrial(@TempDir Path folder) throws IOException {
        Map<String, double[]> bounds = Map.of(
                "vapourPressure", new double[] {850, 1000, 1200},
                "absoluteHumidity", new double[] {6.2, 7.4, 8.5},
                "mixingRatio", new double[] {5.3, 6.4, 7.4},
                "dewPoint", new double[] {4.5, 7.2, 9.5},
                "clothRegain", new double[] {8, 11, 11.5});
        for (Map.Entry<String, double[]> bound : bounds.entrySet()) {
            String name = bound.getKey();
            double[] of = bound.getValue();
            assertThat(rows("&" + name + "From=" + of[0] + "&" + name + "To=" + of[1], folder))
                    .as(name)
                    .isEqualTo(15);
            assertThat(rows("&" + name + "From=" + of[2], folder)).as(name).isEqualTo(15);
        }
        List<Double> vapour = lines("").stream()
                .map(row -> AirMeasure.VAPOUR_PRESSURE.value(
                        row.path("climateTempC").asDouble(),
                        row.path("climateRhPct").asDouble(),
                        SessionTraits.UNKNOWN))
                .sorted()
                .toList();
        double seventh = vapour.get(6);
        assertThat(rows("&vapourPressureTo=" + seventh, folder)).isEqualTo(7);
        assertThat(rows("&vapourPressureFrom=" + Math.nextUp(seventh), folder)).isEqualTo(23);
        assertThat(rows("&bedRelativeHumidityFrom=0", folder)).isZero();
    }

    @Test
    void countsAndQuantilesAreOfWhatPasses() {
        given().get("/api/v1/trials/summary?room=" + ROOM)
                .then()
                .statusCode(200)
                .body("trials", equalTo(30))
                .body("sessions", equalTo(2))
                .body("rooms", equalTo(1))
                .body("contributors", equalTo(1))
                .body("shots[0].name", equalTo("rebound-45-ramp"))
                .body("shots[0].trials", equalTo(20))
                .body("shots[0].sessions", equalTo(2))
                .body("kinds[0].name", equalTo("rebound"))
                .body("countries[0].name", equalTo("NO"))
                .body("relativeHumidity.from", equalTo(List.of(30f, 50f)))
                .body("relativeHumidity.trials", equalTo(List.of(15, 15)))
                .body("temperature.from", equalTo(List.of(20f)))
                .body("responsesFrom", equalTo(30));
    }

    @Test
    void quantilesLieBetweenNeighbours() {
        // type 7 of R's quantile(): quantile(c(1, 2, 3, 4), c(0.05, 0.5)) is 1.15, 2.5
        assertThat(ResponseSample.quantile(new double[] {1, 2, 3, 4}, 0.05)).isEqualTo(1.15);
        assertThat(ResponseSample.quantile(new double[] {1, 2, 3, 4}, 0.5)).isEqualTo(2.5);
        assertThat(ResponseSample.quantile(new double[] {7}, 0.95)).isEqualTo(7);
    }

    @Test
    void aSavedQueryKeepsItsVersionsAndItsOwner() {
        Tokens.as(token)
                .contentType("application/json")
                .body("{\"filter\": {\"room\": \"" + ROOM + "\", \"rhFrom\": 50}}")
                .put("/api/v1/queries/damp-cellar")
                .then()
                .statusCode(201)
                .body("version", equalTo(1))
                .body("owner", equalTo("forms"))
                .body("filter.rhFrom", equalTo("50"));
        given().get("/api/v1/trials?query=damp-cellar").then().body("trials", hasSize(15));
        given().get("/api/v1/sessions?query=damp-cellar").then().body("sessions", hasSize(1));
        given().get("/api/v1/trials/summary?query=damp-cellar").then().body("trials", equalTo(15));
        Tokens.as(token)
                .contentType("application/json")
                .body("{\"filter\": {\"room\": \"" + ROOM + "\"}}")
                .put("/api/v1/queries/damp-cellar")
                .then()
                .statusCode(200)
                .body("version", equalTo(2));
        given().get("/api/v1/trials?query=damp-cellar").then().body("trials", hasSize(30));
        given().get("/api/v1/trials?query=damp-cellar@1&shot=rebound-30-ramp")
                .then()
                .body("trials", hasSize(5));
        given().get("/api/v1/trials?query=damp-cellar&room=" + ROOM)
                .then()
                .statusCode(400)
                .body("detail", containsString("leave one of them out"));
        given().get("/api/v1/queries/damp-celar")
                .then()
                .statusCode(404)
                .body("detail", containsString("did you mean damp-cellar?"));
        given().get("/api/v1/queries").then().body("queries.name", equalTo(List.of("damp-cellar")));
        String other = Tokens.of("forms-other", "contributor", "contribute");
        Tokens.as(other)
                .contentType("application/json")
                .body("{\"filter\": {\"rhFrom\": 10}}")
                .put("/api/v1/queries/damp-cellar")
                .then()
                .statusCode(403)
                .body("code", equalTo("not-yours"));
        Tokens.as(other).delete("/api/v1/queries/damp-cellar").then().statusCode(403);
        given().delete("/api/v1/queries/damp-cellar").then().statusCode(401);
        Tokens.as(token).delete("/api/v1/queries/damp-cellar").then().statusCode(204);
        given().get("/api/v1/trials?query=damp-cellar@1").then().statusCode(404);
    }

    @Test
    void misspeltFiltersAreRefusedWithWhatWasMeant() {
        given().get("/api/v1/trials?dewpointFrom=4")
                .then()
                .statusCode(400)
                .body("code", equalTo("unknown-parameter"))
                .body("detail", containsString("did you mean dewPointFrom?"));
        given().get("/api/v1/trials?kind=rebund")
                .then()
                .statusCode(400)
                .body("detail", containsString("did you mean rebound?"));
        given().get("/api/v1/trials?country=Norway")
                .then()
                .statusCode(400)
                .body("detail", containsString("ISO 3166-1"));
        given().get("/api/v1/trials?rhFrom=60&rhTo=50")
                .then()
                .statusCode(400)
                .body("detail", containsString("exchange"));
        given().get("/api/v1/trials?severityTo=bad")
                .then()
                .statusCode(400)
                .body("detail", containsString("none, note, warn"));
        Tokens.as(token)
                .contentType("application/json")
                .body("{\"filter\": {\"rhForm\": 50}}")
                .put("/api/v1/queries/damp")
                .then()
                .statusCode(400)
                .body("detail", containsString("did you mean rhFrom?"));
    }
}
