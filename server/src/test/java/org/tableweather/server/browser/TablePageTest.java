package org.tableweather.server.browser;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.support.ui.Select;
import org.tableweather.schema.folder.ArchiveLimits;
import org.tableweather.schema.folder.ContributionReader;
import org.tableweather.schema.folder.ContributionSource;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;
import org.tableweather.server.SampleLeague;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** Attempts are logged beside the table, through a lost connection, and end as a folder that the checks take. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
@NeedsBrowser
class TablePageTest {
    // a finger of one pixel on a table of some 57 px a diamond, and the mark rounded to a hundredth
    private static final double TAP_DIA = 0.03;
    private static final int LEAGUE = SampleLeague.ROOMS * SampleLeague.SESSIONS * SampleLeague.TRIALS;

    @TestHTTPResource
    URI server;

    @TempDir
    Path downloads;

    @Test
    void tenAttemptsSurviveALostConnectionAndJoinTheCurve() throws IOException {
        League.contribute();
        assertThat(trialsOfTheCurve()).isEqualTo(LEAGUE);
        try (TableScreen table = TableScreen.open(server, Browser.PHONE_PX, TableScreen.PHONE_HEIGHT_PX)) {
            Browser browser = table.browser();
            browser.downloadTo(downloads);
            judge(browser, "table-home-390");
            table.begin("Phone one", "Phone hall", "kick-3-rail");
            table.readClimate("21,4", "45");
            browser.until("document.querySelector('#climate-button').textContent === '21.4 °C, 45 %'");
            for (int attempt = 1; attempt <= 4; attempt++) {
                table.threeRails(2 + attempt / 10.0);
                table.keep("#missed");
            }
            assertThat(table.tally()).isEqualTo("Attempt 5");
            browser.offline(true);
            browser.until("document.querySelector('#offline').textContent.startsWith('No connection')");
            for (int attempt = 5; attempt <= 6; attempt++) {
                table.threeRails(2 + attempt / 10.0);
                table.keep("#missed");
            }
            table.tap(5.6, 0);
            table.tap(8, 1.5);
            browser.screenshot("table-offline-390");
            browser.resize(Browser.PHONE_PX, TableScreen.PHONE_HEIGHT_PX);
            browser.reload();
            browser.until(
                    "document.body.dataset.view === 'logging' && document.querySelectorAll('#table .mark').length === 2");
            assertThat(browser.<Boolean>script("return navigator.onLine")).isFalse();
            assertThat(table.tally()).isEqualTo("Attempt 7");
            table.tap(5.4, 4);
            table.tap(2.7, 0);
            table.keep("#missed");
            for (int attempt = 8; attempt <= 10; attempt++) {
                table.threeRails(2 + (attempt - 9) / 10.0);
                table.keep("#made");
            }
            judge(browser, "table-logged-390");
            browser.press("#to-finish");
            browser.until("document.body.dataset.view === 'finish'");
            browser.press("#every input[value=yes]");
            browser.press("#findings");
            browser.until("document.querySelector('#outcome').textContent.includes('nothing is lost')");
            // the folder needs no connection
            browser.press("#download");
            Path folder = downloaded();
            browser.offline(false);
            browser.press("#findings");
            browser.until("document.querySelector('#outcome').dataset.outcome === 'sound'");
            judge(browser, "table-findings-390");
            assertTenAttempts(folder);
            browser.find("#token").sendKeys(Tokens.of("Phone one", "contributor", "contribute"));
            browser.press("#contribute-here button");
            browser.until("document.querySelector('#outcome').dataset.outcome === 'contributed'");
            judge(browser, "table-contributed-390");
            assertThat(browser.<Boolean>script("return localStorage.length === 0"))
                    .isTrue();
            assertThat(trialsOfTheCurve()).isEqualTo(LEAGUE + 10);
            browser.go(server.resolve("/?shot=kick-3-rail").toString());
            assertThat(browser.find("main").getText()).contains(Integer.toString(LEAGUE + 10));
            browser.go(server.resolve("/table").toString());
            browser.until("document.querySelector('#kept').textContent.includes('10 attempts, contributed')");
        }
    }

    @Test
    void slipsAreUndoneAndBadInputIsToldInWords() {
        try (TableScreen table = TableScreen.open(server, 360, 640)) {
            Browser browser = table.browser();
            browser.command(
                    "Emulation.setEmulatedMedia",
                    Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", "dark"))));
            browser.press("#begin button[type=submit]");
            assertThat(browser.find("#name-words").getText()).contains("Your name is missing");
            table.type("#room", "a/b");
            new Select(browser.find("#size")).selectByValue("other");
            table.type("#length-mm", "2.54");
            browser.press("#begin button[type=submit]");
            assertThat(browser.find("#room-words").getText()).contains("leave out the character");
            assertThat(browser.find("#length-mm-words").getText()).contains("2.54 lies outside 500 to 4000");
            judge(browser, "table-bad-set-up-360-dark");
            browser.resize(360, 640);
            new Select(browser.find("#size")).selectByValue("pool-9ft");
            browser.find("#room").clear();
            table.begin("Phone two", "Small hall", "kick-3-rail");
            table.readClimate("21.4", "450");
            assertThat(browser.find("#rh-words").getText()).contains("450 lies outside 0 to 100");
            table.type("#rh", "damp");
            browser.press("#climate button[type=submit]");
            assertThat(browser.find("#rh-words").getText()).contains("“damp” is no number");
            table.type("#rh", "45");
            browser.press("#climate button[type=submit]");
            browser.until("document.querySelector('#climate').hidden");

            table.touch(4, 2);
            table.untilPrompt("not beside the near rail");
            assertThat(table.marks()).isZero();
            table.touch(5.6, 0);
            table.touch(5.6, 0);
            browser.until("document.querySelector('#last-mark').textContent.startsWith('near rail 5.')");
            assertThat(table.marks()).as("a finger that bounced marks once").isEqualTo(1);
            String before = browser.find("#last-mark").getText();
            browser.press("#more");
            browser.until("document.querySelector('#last-mark').textContent !== '" + before + "'");
            assertThat(diamond(browser)).isCloseTo(diamond(before) + 0.05, within(1e-9));
            table.undo(0);
            table.tap(0, 2);
            table.untilPrompt("Marked on the head rail, not the near rail");
            table.undo(0);
            table.threeRails(2);
            browser.script("document.querySelector('#made').click(); document.querySelector('#made').click();");
            table.untilPrompt("Kept attempt 1, made");
            assertThat(table.tally()).as("pressed twice, kept once").isEqualTo("Attempt 2");
            table.undo(4);
            table.untilPrompt("Attempt 1 is open again");
            table.keep("#missed");
            judge(browser, "table-logged-360-dark");
            browser.resize(360, 640);
            browser.press("#to-finish");
            browser.until("document.body.dataset.view === 'finish'");
            browser.press("#download");
            browser.until("document.querySelector('#outcome').textContent.includes('Say first whether every attempt')");
            judge(browser, "table-finish-360-dark");
            browser.go(server.resolve("/table#sessions").toString());
            browser.until("document.body.dataset.view === 'home' && document.querySelector('#kept button')");
            browser.press("#kept button");
            assertThat(browser.find("#kept").getText()).contains("1 attempt would be lost");
            browser.press("#kept button");
            browser.until("document.querySelector('#kept-here').hidden");
        }
    }

    @Test
    void twoTabsKeepOneLog() {
        try (TableScreen table = TableScreen.open(server, Browser.PHONE_PX, TableScreen.PHONE_HEIGHT_PX)) {
            Browser browser = table.browser();
            table.begin("Phone three", "Two tabs", "kick-3-rail");
            String address = browser.address();
            table.tap(5.6, 0);
            String first = browser.openTab();
            browser.go(address);
            browser.until("document.querySelectorAll('#table .mark').length === 1");
            browser.press("#missed");
            browser.until("document.querySelector('#tally').textContent === 'Attempt 2'");
            String second = browser.toTab(first);
            browser.until("document.querySelector('#tally').textContent === 'Attempt 2'");
            assertThat(table.marks()).isZero();
            table.keep("#missed");
            browser.toTab(second);
            browser.until("document.querySelector('#tally').textContent === 'Attempt 3'");
            assertThat(browser.complaints()).isEmpty();
        }
    }

    @Test
    void aKeyboardAndTypedNumbersDoAsWell() throws IOException {
        try (TableScreen table = TableScreen.open(server, Browser.DESK_PX, 900)) {
            Browser browser = table.browser();
            browser.downloadTo(downloads);
            judge(browser, "table-home-1440");
            browser.resize(Browser.DESK_PX, 900);
            table.begin("Desk", "Desk hall", "rebound-30-ramp");
            table.readClimate("21.4", "45");
            browser.until("document.querySelector('#climate').hidden");
            // from the middle of the near rail to the head rail's side by 14 steps of 0.05
            browser.find("#table").sendKeys(Keys.ARROW_LEFT.toString().repeat(14), Keys.ENTER);
            browser.until("document.querySelector('#last-mark').textContent === 'near rail 3.30'");
            browser.press("#other summary");
            new Select(browser.find("#where")).selectByValue("far");
            table.type("#along", "55");
            browser.press("#typed-mark button");
            assertThat(browser.find("#along-words").getText()).contains("55 lies outside 0.09 to 7.91");
            table.type("#along", "5.5");
            browser.press("#typed-mark button");
            browser.until("document.querySelector('#last-mark').textContent === 'far rail 5.50'");
            browser.find("#note").sendKeys("a clean one, \"by keys\"");
            judge(browser, "table-keys-1440");
            browser.resize(Browser.DESK_PX, 900);
            table.keep("#keep");
            assertThat(browser.find("#note").getAttribute("value")).isEmpty();
            // a shot without rails is typed
            new Select(browser.find("#shot-now")).selectByValue("hop-drop");
            browser.until("document.querySelector('#hop_height_mm')");
            table.keepNothing();
            browser.find("#hop_height_mm").sendKeys("48");
            table.keep("#keep");
            judge(browser, "table-typed-1440");
            browser.press("#to-finish");
            browser.until("document.body.dataset.view === 'finish'");
            browser.press("#every input[value=no]");
            browser.press("#download");
            List<Trial> trials = accepted(downloaded());
            assertThat(trials).hasSize(2);
            // start (2.19, 2), rail at 3.30, landing at 5.50, of a centre 0.09 diamond from the noses: tan = 2.2/3.82
            // across, on a
            // table whose diamonds are as long across as along
            assertThat(trials.get(0).finalReboundAngleDeg())
                    .isCloseTo(Math.toDegrees(Math.atan(2.2 / 3.82)), within(0.01));
            assertThat(trials.get(0).note()).contains("a clean one, \"by keys\"");
            assertThat(trials.get(1).hopHeightMm()).isEqualTo(48);
        }
    }

    private static double diamond(Browser browser) {
        return diamond(browser.find("#last-mark").getText());
    }

    private static double diamond(String place) {
        return Double.parseDouble(place.substring(place.lastIndexOf(' ') + 1));
    }

    private void judge(Browser browser, String name) {
        long width = browser.<Number>script("return innerWidth").longValue();
        assertThat(browser.accessibilityViolations()).as(name).isEmpty();
        assertThat(browser.widthPx()).as(name + browser.pastPx(width)).isLessThanOrEqualTo(width);
        assertThat(browser.requests())
                .as(name + ": hosts")
                .allMatch(uri -> uri.getHost().equals(server.getHost()));
        browser.screenshot(name);
    }

    private static int trialsOfTheCurve() {
        return given().get("/api/v1/analyses/rebound-humidity?shot=kick-3-rail")
                .then()
                .statusCode(200)
                .extract()
                .path("dataset.trials");
    }

    /** Waits for the download. */
    private Path downloaded() throws IOException {
        for (int i = 0; i < 100; i++) {
            try (Stream<Path> files = Files.list(downloads)) {
                List<Path> zips =
                        files.filter(file -> file.toString().endsWith(".zip")).toList();
                if (!zips.isEmpty()) {
                    return zips.get(0);
                }
                Thread.sleep(100);
            } catch (InterruptedException e) {
                throw new IllegalStateException("a test is not interrupted", e);
            }
        }
        throw new AssertionError("no .zip was downloaded");
    }

    /** What the schema's own reader takes from the folder; nothing in it is refused. */
    private static List<Trial> accepted(Path folder) throws IOException {
        List<Trial> trials = new ArrayList<>();
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.Result result = ContributionReader.create()
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            (session, run) -> trials.addAll(run),
                            (session, all) -> {});
            assertThat(result.report().isRefused())
                    .as(result.report().findings() + "")
                    .isFalse();
        }
        return trials;
    }

    private static void assertTenAttempts(Path folder) throws IOException {
        List<Trial> trials = accepted(folder);
        assertThat(trials).hasSize(10);
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            assertThat(trial.trial()).isEqualTo(Integer.toString(i + 1));
            assertThat(trial.made()).isEqualTo(i < 7 ? Made.NO : Made.YES);
            // the target is diamond 2 of the near rail; farther from the head rail is short, so negative
            double landing = i < 7 ? 2 + (i + 1) / 10.0 : 2 + (i - 8) / 10.0;
            assertThat(trial.landingOffsetDia()).isCloseTo(2 - landing, within(TAP_DIA));
            // from (5.4, far) to the landing, the centres 3.82 diamonds apart across
            assertThat(trial.finalReboundAngleDeg())
                    .isCloseTo(Math.toDegrees(Math.atan((5.4 - landing) / 3.82)), within(0.8));
            assertThat(trial.climate().source()).isEqualTo(ClimateSource.LOG);
            assertThat(trial.climate().rhPct()).isEqualTo(45);
            assertThat(trial.rails()).isEqualTo(3);
        }
    }
}
