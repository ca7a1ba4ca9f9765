package org.tableweather.server.browser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.tableweather.release.Manifest;
import org.tableweather.server.TestData;

/** What pages tell of contributions, releases and sessions is what the interface for programs tells. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
@NeedsBrowser
class PoolPagesTest {
    private static boolean filled;
    private static int sound;
    private static int refused;

    @TestHTTPResource
    URI server;

    @BeforeEach
    void fill() throws IOException {
        if (!filled) {
            League.contribute();
            sound = League.accepted();
            refused = League.refused();
            League.freeze("First sessions");
            League.withdraw(1, "wrong hygrometer");
            League.freeze("Sessions until spring");
            filled = true;
        }
    }

    private static String text(Browser browser, String css) {
        return browser.find(css).getText();
    }

    private void go(Browser browser, String path) {
        browser.go(server.resolve(path).toString());
    }

    @Test
    void contributionsAreListedByState() {
        try (Browser browser = Browser.open(Browser.DESK_PX)) {
            go(browser, "/contributions");
            assertThat(browser.all("tbody tr")).hasSize(7);
            browser.script("document.querySelector('#state').value = 'withdrawn'");
            browser.press("form button");
            browser.until("document.querySelectorAll('tbody tr').length === 1");
            assertThat(text(browser, "tbody tr")).contains("withdrawn", "wrong hygrometer", "CC0-1.0", "league-0");
            go(browser, "/contributions?state=checked");
            assertThat(text(browser, "main")).contains("No contribution is checked.");
            go(browser, "/contributions?state=mislaid");
            assertThat(text(browser, "main")).contains("state = mislaid is not one of", "choose one of them");
        }
    }

    @Test
    void aRefusedContributionTellsRowColumnValueBoundAndRemedy() {
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            go(browser, "/contributions/" + refused);
            assertThat(text(browser, "main .answer")).contains("refused", "mended");
            List<WebElement> findings = browser.all(".finding");
            assertThat(findings).isNotEmpty();
            // rows as a spreadsheet counts: the header is row 1, the first reading row 2
            assertThat(findings.get(0).getText())
                    .contains("refuse", "climate.csv, row 2, rh_pct", "140", "Bound", "Remedy");
            String check = findings.get(0).findElement(By.cssSelector("dd a")).getDomAttribute("href");
            go(browser, check);
            assertThat(browser.all("[id='" + check.substring(check.indexOf('#') + 1) + "']"))
                    .hasSize(1);
        }
    }

    @Test
    void aContributionTellsItsArchiveAndItsSessions() {
        String archive = RestAssured.get("/api/v1/contributions/" + sound).path("sha256");
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            go(browser, "/contributions/" + sound);
            assertThat(text(browser, "main")).contains(archive, "CC-BY-4.0", "sessions: 2; attempts: 30");
            // the position of the cellar is rounded already: anybody may have its archive
            assertThat(browser.all("a[href='/api/v1/contributions/" + sound + "/archive']"))
                    .hasSize(1);
            assertThat(browser.all("tbody th a")).hasSize(2);
        }
    }

    @Test
    void aReleaseTellsWhatItsManifestTells() throws IOException {
        Manifest manifest = Manifest.read(
                RestAssured.get("/api/v1/releases/2/files/manifest.json").asByteArray());
        String citation = RestAssured.get("/api/v1/releases/2/files/CITATION.txt")
                .asString()
                .strip();
        try (Browser browser = Browser.open(Browser.DESK_PX)) {
            go(browser, "/releases");
            assertThat(browser.all(".releases li")).hasSize(2);
            go(browser, "/releases/2");
            assertThat(text(browser, "pre.copy")).isEqualTo(citation);
            String main = text(browser, "main");
            assertThat(main)
                    .contains(manifest.hash(), manifest.datasetHash(), "wrong hygrometer", "Against release 1")
                    .contains(manifest.changes().withdrawn() + " withdrawn")
                    .contains(
                            "tableweather fetch 2 --server " + server.toString().replaceAll("/$", ""));
            browser.script("document.querySelectorAll('details').forEach(one => one.open = true)");
            List<String> files =
                    browser.script("return [...document.querySelectorAll('details a')].map(a => a.getAttribute('href'))"
                            + ".filter(href => href.includes('/files/'))");
            assertThat(files)
                    .containsExactlyInAnyOrderElementsOf(manifest.files().stream()
                            .map(file -> "/api/v1/releases/2/files/" + file.path())
                            .toList());
            for (String file : files) {
                assertThat(RestAssured.given()
                                .urlEncodingEnabled(false)
                                .get(file)
                                .statusCode())
                        .as(file)
                        .isEqualTo(200);
            }
        }
    }

    @Test
    void aSessionDrawsWhatWasMarkedToScale() {
        try (Browser browser = Browser.open(Browser.DESK_PX)) {
            go(browser, "/rooms/0000-0002-1825-0097/cellar");
            browser.press("tbody a[href$='/s1']");
            browser.until("document.querySelectorAll('.drawing svg').length === 2");
            // a diamond is 100 units; the nose of the head rail at 70, that of the near rail at 470
            List<String> paths = browser.script("return [...document.querySelectorAll('.drawing polyline')]"
                    + ".filter(line => line.getAttribute('stroke-opacity')).map(line => line.getAttribute('points'))");
            assertThat(paths).containsExactly("197,270 388,461 763,79");
            assertThat(text(browser, "figure:has(polyline[stroke-opacity]) figcaption"))
                    .contains("1 marked path");
            assertThat(text(browser, "main")).contains("85 % wool", "± 2.0 % relative humidity", "phenolic");
            assertThat(text(browser, ".findings")).contains("trials.csv, row 3", "the contacts give 44.47");
            go(browser, "/sessions/0000-0002-1825-0097/cellar/s2");
            assertThat(text(browser, "main"))
                    .contains("Nothing about this session in particular", "No path was marked");
        }
    }

    @Test
    void aSessionPlotsItsLogAndItsAttempts() {
        try (Browser browser = Browser.open(Browser.DESK_PX)) {
            go(browser, "/sessions/0000-0002-1825-0097/cellar/s1");
            browser.until("[...document.querySelectorAll('figure.plot')].length === 3"
                    + " && [...document.querySelectorAll('figure.plot')].every(figure => figure.chart)");
            // the log as written: 38 % at 18:00, 41 % at 19:00; the session began at 18:05
            assertThat(series(browser, "humidity", "relative humidity"))
                    .hasSize(7)
                    .startsWith(List.of(-300 / 3600.0, 38.0))
                    .endsWith(List.of(3300 / 3600.0, 41.0));
            // attempt 5 at 18:15, half way between 38.5 % and 39 %
            assertThat(series(browser, "humidity", "humidity at the attempts"))
                    .hasSize(15)
                    .contains(List.of(600 / 3600.0, 38.75));
            assertThat(series(browser, "final-angle", "rebound-30-ramp")).allMatch(point -> point.get(1) < 30);
            assertThat(series(browser, "final-angle", "rebound-45-ramp")).hasSize(10);
            // dew point of 20 °C and 38 %, handbook tables of moist air: 5.2 °C
            assertThat(series(browser, "temperature", "dew point").get(0).get(1))
                    .isCloseTo(5.2, within(0.15));
        }
    }

    private static List<List<Double>> series(Browser browser, String plot, String name) {
        List<List<Number>> found = browser.script(
                "return document.querySelector('#plot-' + arguments[0]).chart.getOption().series"
                        + ".find(one => one.name === arguments[1]).data",
                plot,
                name);
        return found.stream()
                .map(point -> List.of(point.get(0).doubleValue(), point.get(1).doubleValue()))
                .toList();
    }

    @Test
    void aSessionThatIsNotPublishedIsRefusedInWords() {
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            go(browser, "/sessions/league-0/hall/s0");
            assertThat(text(browser, "main")).contains("league-0/hall/s0 is not published");
        }
    }

    @Test
    void driftIsTheRoomsOwnSlopeTimesTheChange() {
        String room = "league-1/hall";
        List<Map<String, Object>> sessions = RestAssured.given()
                .queryParam("room", room)
                .get("/api/v1/sessions")
                .path("sessions");
        double usual = sessions.stream()
                .mapToDouble(one -> (number(one, "rhMinPct") + number(one, "rhMaxPct")) / 2)
                .average()
                .orElseThrow();
        double factor = (70 - Math.round(usual * 10) / 10.0) / 10;
        Map<String, Object> here =
                estimate("room-comparison", Map.of("room", room, "shot", "kick-3-rail"), "humidity.here");
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            go(browser, "/drift?room=" + room + "&tempC=21&rhPct=70");
            assertThat(text(browser, ".drifts li:first-child"))
                    .contains("In this room", signed(number(here, "value") * factor))
                    // the slope falls with humidity, so its lower end stays the lower end where humidity rises
                    .contains(
                            signed(number(here, "lower") * factor) + "° to " + signed(number(here, "upper") * factor));
            assertThat(text(browser, "main")).contains("4 sessions of this room");
            go(browser, "/drift?rhPct=20&tempC=21");
            assertThat(text(browser, "main"))
                    .contains("A room that is not in the pool", "beyond them", "In a room not yet measured");
        }
    }

    @Test
    void driftTakesTheLatestClimateAndRefusesInWords() {
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            go(browser, "/drift?room=0000-0002-1825-0097/cellar");
            browser.press("button[name=latest]");
            browser.until("document.querySelector('#today')");
            // the last attempt at 18:35, half way between 20.3 and 20.4 °C, 56.5 and 57 %; the log as written
            assertThat(text(browser, "main dl")).contains("20.4 °C and 56.8 %", "2026-01-13 17:35");
            go(browser, "/drift?tempC=warm&rhPct=140");
            assertThat(text(browser, "main"))
                    .contains("warm is no number", "140 lies outside 1 to 100", "Mend what is marked");
            assertThat(browser.all("[aria-invalid=true]")).hasSize(2);
            go(browser, "/drift?tempC=21");
            assertThat(text(browser, "[role=alert]")).contains("both temperature and humidity");
            go(browser, "/drift?latest=yes");
            assertThat(text(browser, "[role=alert]")).contains("Choose a room");
            go(browser, "/drift?room=nowhere/hall");
            assertThat(text(browser, "main")).contains("nowhere/hall has no published session");
        }
    }

    private static double number(Map<String, Object> row, String name) {
        return ((Number) row.get(name)).doubleValue();
    }

    private static String signed(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value).replace('-', '−');
        return value > 0 ? "+" + text : text;
    }

    private static Map<String, Object> estimate(String analyzer, Map<String, String> asked, String name) {
        List<Map<String, Object>> estimates = RestAssured.given()
                .queryParams(asked)
                .get("/api/v1/analyses/" + analyzer)
                .path("estimates");
        return estimates.stream()
                .filter(one -> one.get("name").equals(name))
                .findFirst()
                .orElseThrow();
    }
}
