package org.tableweather.server.catalogue;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/**
 * Lists and filters over the example contribution: two sessions of fifteen trials on 12 and 13 January, the first at 38 to
 * 41 %, the second at 55 to 58 %, both warming from 20.00 °C by 0.01 K a minute from 18:00; trials at 18:07, 18:09 ...;
 * a third of them steep.
 */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class CatalogueTest {
    private static final String ROOM = "catalogue/cellar";
    private static boolean contributed;

    @BeforeEach
    void contribute() {
        if (!contributed) {
            Tokens.as(Tokens.of("catalogue", "contributor", "contribute"))
                    .contentType("application/zip")
                    .body(Examples.archive("catalogue"))
                    .post("/api/v1/contributions")
                    .then()
                    .statusCode(201);
            contributed = true;
        }
    }

    private static int trials(String filter) {
        List<Integer> ordinals = given().get("/api/v1/trials?limit=1000&room=" + ROOM + filter)
                .then()
                .statusCode(200)
                .extract()
                .path("trials.ordinal");
        return ordinals.size();
    }

    @Test
    void trialsAreFilteredByShotKindTimeAndClimate() {
        assertThat(trials("")).isEqualTo(30);
        assertThat(trials("&shot=rebound-30-ramp")).isEqualTo(10);
        assertThat(trials("&shot=rebound-45-ramp&kind=rebound")).isEqualTo(20);
        assertThat(trials("&kind=bank")).isZero();
        assertThat(trials("&from=2026-01-13")).isEqualTo(15);
        assertThat(trials("&to=2026-01-13T00:00:00Z")).isEqualTo(15);
        assertThat(trials("&from=2026-01-12T17:07:00Z&to=2026-01-12T17:11:00Z")).isEqualTo(2);
        assertThat(trials("&rhFrom=50")).isEqualTo(15);
        assertThat(trials("&rhTo=50")).isEqualTo(15);
        // 18:07 and 18:09 of each day
        assertThat(trials("&tempTo=20.1")).isEqualTo(4);
        assertThat(trials("&tempFrom=20.1&tempTo=20.12")).isEqualTo(2);
    }

    @Test
    void sessionsAndRoomsTakeTheSameFilters() {
        given().get("/api/v1/sessions?room=" + ROOM + "&rhFrom=50")
                .then()
                .statusCode(200)
                .body("sessions", hasSize(1))
                .body("sessions[0].key", equalTo(ROOM + "/s2"))
                .body("sessions[0].trials", equalTo(15))
                .body("sessions[0].startedAt", equalTo("2026-01-13T17:05:00Z"))
                .body("sessions[0].endedAt", equalTo("2026-01-13T17:35:00Z"))
                .body("sessions[0].shots.shot", equalTo(List.of("rebound-30-ramp", "rebound-45-ramp")))
                .body("sessions[0].shots.trials", equalTo(List.of(5, 10)))
                .body("sessions[0].entry", nullValue());
        given().get("/api/v1/rooms?room=" + ROOM + "&shot=rebound-30-ramp")
                .then()
                .statusCode(200)
                .body("rooms", hasSize(1))
                .body("rooms[0].name", equalTo("Cellar of catalogue"))
                .body("rooms[0].climateControl", equalTo(List.of("heating", "dehumidifier")))
                .body("rooms[0].sessions", equalTo(2))
                .body("rooms[0].trials", equalTo(30))
                .body("rooms[0].invented", equalTo(true));
        given().get("/api/v1/rooms?room=" + ROOM + "&kind=bank").then().body("rooms", hasSize(0));
    }

    @Test
    void oneSessionComesWithAllItRefersTo() {
        int id = given().get("/api/v1/sessions?room=" + ROOM).then().extract().path("sessions[0].id");
        given().get("/api/v1/sessions/" + id)
                .then()
                .statusCode(200)
                .body("entry.table.cloth.woolPct", equalTo(85f))
                .body("entry.session.startedAt", equalTo("2026-01-12T18:05:00+01:00"))
                .body("entry.ballSet.massG", equalTo(168f));
    }

    @Test
    void pagesGiveEveryTrialOnce() {
        List<String> walked = new ArrayList<>();
        String after = "";
        int pages = 0;
        do {
            Map<String, Object> page = given().get("/api/v1/trials?limit=7&room=" + ROOM + after)
                    .then()
                    .statusCode(200)
                    .extract()
                    .path("$");
            for (Object row : (List<?>) page.get("trials")) {
                Map<?, ?> trial = (Map<?, ?>) row;
                walked.add(trial.get("sessionKey") + "/" + trial.get("trial"));
            }
            after = page.get("next") == null ? null : "&after=" + page.get("next");
            pages++;
        } while (after != null);
        assertThat(pages).isEqualTo(5);
        assertThat(walked).hasSize(30).doesNotHaveDuplicates();
        assertThat(walked.get(14)).isEqualTo(ROOM + "/s1/15");
        assertThat(walked.get(15)).isEqualTo(ROOM + "/s2/1");
    }

    @Test
    void pagesOfSessionsAndRoomsGoOn() {
        String next = given().get("/api/v1/sessions?limit=1&room=" + ROOM)
                .then()
                .extract()
                .path("next");
        given().get("/api/v1/sessions?limit=1&room=" + ROOM + "&after=" + next)
                .then()
                .body("sessions[0].key", equalTo(ROOM + "/s2"))
                .body("next", nullValue());
        given().get("/api/v1/rooms?after=Y2F0YWxvZ3VlL2NlbGxhcg&room=" + ROOM)
                .then()
                .body("rooms", hasSize(0));
    }

    @Test
    void csvGivesEverythingWithUnitsInTheHeader() {
        String csv = given().accept("text/csv")
                .get("/api/v1/trials?room=" + ROOM)
                .then()
                .statusCode(200)
                .contentType(startsWith("text/csv"))
                .extract()
                .asString();
        List<NamedCsvRecord> rows =
                CsvReader.builder().ofNamedCsvRecord(csv).stream().toList();
        assertThat(rows).hasSize(30);
        NamedCsvRecord first = rows.get(0);
        assertThat(first.getField("room")).isEqualTo(ROOM);
        assertThat(first.getField("trial")).isEqualTo("1");
        assertThat(first.getField("started_at")).isEqualTo("2026-01-12T17:07:00Z");
        assertThat(first.getField("climate_source")).isEqualTo("log");
        assertThat(first.getField("approach_angle_deg")).isIn("30.1", "45");
        assertThat(given().get("/api/v1/trials?format=csv&limit=3&room=" + ROOM)
                        .asString()
                        .lines())
                .hasSize(4);
        assertThat(given().get("/api/v1/rooms?format=csv&room=" + ROOM).asString())
                .startsWith("key,name,country,");
        assertThat(given().get("/api/v1/sessions?format=csv&room=" + ROOM)
                        .asString()
                        .lines())
                .hasSize(3);
    }

    @Test
    void whatAClientHoldsIsNotSentAgain() {
        String tag = given().get("/api/v1/trials?room=" + ROOM).then().extract().header("ETag");
        given().header("If-None-Match", tag)
                .get("/api/v1/trials?room=" + ROOM)
                .then()
                .statusCode(304);
        // another form of the same is another thing
        given().header("If-None-Match", tag)
                .get("/api/v1/trials?format=csv&room=" + ROOM)
                .then()
                .statusCode(200);
    }

    @Test
    void filtersThatCannotBeReadAreRefused() {
        for (String filter : List.of("kind=slide", "from=yesterday", "tempTo=warm", "format=xml", "after=MQ")) {
            given().get("/api/v1/trials?" + filter)
                    .then()
                    .statusCode(400)
                    .body("code", equalTo("bad-request"))
                    .body("detail", containsString(filter.substring(0, filter.indexOf('='))));
        }
    }
}
