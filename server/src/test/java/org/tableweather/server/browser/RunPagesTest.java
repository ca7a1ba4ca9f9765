package org.tableweather.server.browser;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.server.TestData;

/** A run is started, watched, cancelled and set beside another from its pages; a form of another site does nothing. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
@NeedsBrowser
class RunPagesTest {
    private static final int SEE_OTHER = 303;
    private static final int FORBIDDEN = 403;
    private static boolean filled;

    @TestHTTPResource
    URI server;

    private void fill() throws IOException {
        if (!filled) {
            League.contribute();
            filled = true;
        }
    }

    private void go(Browser browser, String path) {
        browser.go(server.resolve(path).toString());
    }

    private String run(Browser browser, String query) {
        go(browser, "/runs/new?" + query);
        browser.press("main form button");
        browser.until(
                "document.querySelector('#state') && document.querySelector('#state').textContent === 'It is done.'");
        return browser.address().substring(browser.address().lastIndexOf('/') + 1);
    }

    @Test
    void twoRunsAreSetBesideEachOther() throws IOException {
        fill();
        try (Browser browser = Browser.open(Browser.DESK_PX)) {
            String first = run(browser, "analyzer=rebound-humidity");
            String second = run(browser, "analyzer=rebound-humidity&df_method=kenward-roger");
            assertThat(first).isNotEqualTo(second);
            go(browser, "/runs");
            // other tests start runs too
            browser.press("input[name=first][value='" + first + "']");
            browser.press("input[name=second][value='" + second + "']");
            browser.press("form[action='/runs/compare'] button");
            browser.until("[...document.querySelectorAll('figure.plot')].length === 2"
                    + " && [...document.querySelectorAll('figure.plot')].every(figure => figure.chart)");
            assertThat(browser.find("main").getText()).contains("df_method", "satterthwaite", "kenward-roger");
            List<String> told = browser.script("return [...document.querySelectorAll('tbody tr')]"
                    + ".find(row => row.cells[0].textContent === 'humidity').innerText.split('\\t')");
            assertThat(told.get(2)).startsWith(value(first, "humidity"));
            assertThat(told.get(3)).startsWith(value(second, "humidity"));
            assertThat(browser.accessibilityViolations()).isEmpty();
            assertThat(browser.widthPx()).isLessThanOrEqualTo(Browser.DESK_PX);
            browser.screenshot("run-comparison-1440");
            go(browser, "/runs/" + first);
            browser.until("[...document.querySelectorAll('figure.plot')].every(figure => figure.chart)");
            assertThat(browser.accessibilityViolations()).isEmpty();
            browser.screenshot("run-1440");
            browser.resize(Browser.PHONE_PX);
            go(browser, "/runs/" + first);
            assertThat(browser.widthPx()).isLessThanOrEqualTo(Browser.PHONE_PX);
            browser.screenshot("run-390");
            go(browser, "/runs/compare?first=" + first + "&second=" + second);
            assertThat(browser.widthPx()).isLessThanOrEqualTo(Browser.PHONE_PX);
            browser.screenshot("run-comparison-390");
            go(browser, "/runs/compare?first=" + first);
            assertThat(browser.find("main").getText()).contains("no second run is chosen");
            assertThat(browser.complaints()).allMatch(line -> line.contains("400"));
        }
    }

    private static String value(String run, String estimate) {
        List<Map<String, Object>> estimates =
                given().get("/api/v1/runs/" + run + "/result").path("estimates");
        double value = estimates.stream()
                .filter(one -> one.get("name").equals(estimate))
                .mapToDouble(one -> ((Number) one.get("value")).doubleValue())
                .findFirst()
                .orElseThrow();
        return String.format(Locale.ROOT, "%.3f", value).replace('-', '−');
    }

    @Test
    void aRunIsWatchedAndCancelled() throws IOException {
        fill();
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            go(browser, "/runs/new?analyzer=rebound-humidity");
            browser.script("document.querySelector('#bootstrap').value = '10000'");
            browser.press("main form button");
            browser.until("/bootstrap/.test(document.querySelector('#state').textContent)");
            assertThat(browser.accessibilityViolations()).isEmpty();
            browser.press("form[action$='/cancel'] button");
            browser.until("document.querySelector('#state').textContent === 'It was cancelled.'");
            String run = browser.address().substring(browser.address().lastIndexOf('/') + 1);
            given().get("/api/v1/runs/" + run).then().body("state", equalTo("cancelled"));
            go(browser, "/runs/new?analyzer=rebound-humidity");
            browser.script("document.querySelector('#bootstrap').value = 'many'");
            browser.press("main form button");
            // said by the page that comes, not by the one that goes
            browser.until("/bootstrap = many/.test(document.querySelector('main .answer')?.textContent)");
        }
    }

    @Test
    void aFormOfAnotherSiteStartsNothing() throws IOException {
        fill();
        String own = server.getScheme() + "://" + server.getAuthority();
        List<Map<String, String>> others = List.of(
                Map.of("Sec-Fetch-Site", "cross-site", "Origin", own),
                Map.of("Sec-Fetch-Site", "same-site"),
                Map.of("Origin", "https://elsewhere.example"),
                Map.of("Origin", "null"),
                Map.of());
        for (Map<String, String> headers : others) {
            assertThat(start(headers)).as(headers.toString()).isEqualTo(FORBIDDEN);
        }
        assertThat(start(Map.of("Origin", own))).isEqualTo(SEE_OTHER);
        assertThat(start(Map.of("Sec-Fetch-Site", "same-origin"))).isEqualTo(SEE_OTHER);
    }

    private static int start(Map<String, String> headers) {
        return given().redirects()
                .follow(false)
                .headers(headers)
                .contentType("application/x-www-form-urlencoded")
                .formParam("analyzer", "room-slopes")
                .post("/runs")
                .statusCode();
    }
}
