package org.tableweather.server.browser;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.tableweather.server.TestData;

/** Every page, empty and filled, on a phone and at a desk: it opens, reads, and asks nobody but us. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
@NeedsBrowser
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class PagesTest {
    private static final int NARROWEST_PX = 360;
    private static final int WIDEST_PX = 1920;
    private static final Map<String, String> PAGES = new LinkedHashMap<>();

    static {
        PAGES.put("curve", "/");
        PAGES.put("curve-declined", "/?shot=kick-6-rail");
        PAGES.put("rooms", "/rooms");
        PAGES.put("room", "/rooms/league-1/hall");
        PAGES.put("shots", "/shots");
        PAGES.put("shot", "/shots/kick-4-rail");
        PAGES.put("analyses", "/analyses");
        PAGES.put("analysis", "/analyses/room-slopes");
        PAGES.put("compare", "/compare?room=league-1/hall");
        PAGES.put("how-to-contribute", "/how-to-contribute");
        PAGES.put("contribute", "/contribute");
        PAGES.put("table", "/table");
        PAGES.put("checks", "/checks");
        PAGES.put("sources", "/sources");
        PAGES.put("dictionary", "/dictionary");
        PAGES.put("cautions", "/cautions");
        PAGES.put("cautions-asked", "/cautions?tempC=35&rhPct=80&hours=8&bedC=17");
        PAGES.put("cautions-bad", "/cautions?tempC=350&rhPct=damp");
        PAGES.put("contributions", "/contributions");
        PAGES.put("contribution", "/contributions/2");
        PAGES.put("contribution-withdrawn", "/contributions/1");
        PAGES.put("contribution-refused", "/contributions/7");
        PAGES.put("releases", "/releases");
        PAGES.put("release", "/releases/2");
        PAGES.put("session", "/sessions/0000-0002-1825-0097/cellar/s1");
        PAGES.put("session-plain", "/sessions/league-1/hall/s0");
        PAGES.put("drift", "/drift");
        PAGES.put("drift-today", "/drift?room=league-1/hall&tempC=24.5&rhPct=68");
        PAGES.put("drift-bad", "/drift?tempC=warm&rhPct=140");
        PAGES.put("runs", "/runs");
        PAGES.put("run-new", "/runs/new?analyzer=rebound-humidity");
        PAGES.put("missing", "/nothing-here");
    }

    @TestHTTPResource
    URI server;

    @Test
    @Order(1)
    void pagesOfAnEmptyServerTellHowToBeTheFirst() {
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            browser.go(server + "");
            assertThat(browser.find("main").getText()).contains("Nothing has been contributed yet", "tableweather new");
            browser.go(server.resolve("/rooms").toString());
            assertThat(browser.find("main").getText()).contains("how to be the first");
            browser.go(server.resolve("/shots/kick-3-rail").toString());
            assertThat(browser.find("main").getText()).contains("No attempts at this shot yet");
            browser.go(server.resolve("/contributions").toString());
            assertThat(browser.find("main").getText()).contains("Nothing has been contributed yet", "the first");
            browser.go(server.resolve("/releases").toString());
            assertThat(browser.find("main").getText()).contains("Nothing has been released yet");
            assertThat(browser.complaints()).isEmpty();
        }
    }

    @Test
    @Order(2)
    void everyPageOpensReadsAndAsksNobodyElse() throws IOException {
        League.contribute();
        assertThat(League.accepted()).isEqualTo(6);
        assertThat(League.refused()).isEqualTo(7);
        League.freeze("First sessions");
        League.withdraw(1, "wrong hygrometer");
        League.freeze("Sessions until spring");
        SoftAssertions all = new SoftAssertions();
        for (int width : List.of(Browser.PHONE_PX, Browser.DESK_PX)) {
            try (Browser browser = Browser.open(width)) {
                PAGES.forEach((name, path) -> look(browser, width, name + "-" + width, path, all));
            }
        }
        all.assertAll();
    }

    @Test
    @Order(3)
    void darkPagesReadAsWell() {
        SoftAssertions all = new SoftAssertions();
        try (Browser browser = Browser.open(Browser.PHONE_PX)) {
            browser.command(
                    "Emulation.setEmulatedMedia",
                    Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", "dark"))));
            for (String name :
                    List.of("curve", "shot", "checks", "cautions-bad", "session", "contribution-refused", "release")) {
                look(browser, Browser.PHONE_PX, name + "-dark", PAGES.get(name), all);
            }
        }
        all.assertAll();
    }

    private void look(Browser browser, long width, String name, String path, SoftAssertions all) {
        browser.go(server.resolve(path).toString());
        browser.until("document.readyState === 'complete'"
                + " && [...document.querySelectorAll('figure.plot')].every(figure => figure.chart)");
        all.assertThat(browser.title()).as(name + ": title").endsWith("| Tableweather");
        all.assertThat(browser.all("main h1")).as(name + ": one heading").hasSize(1);
        all.assertThat(browser.widthPx())
                .as(name + ": content in px, past the screen " + browser.pastPx(width))
                .isLessThanOrEqualTo(width);
        // the same page on the narrowest phone, on the widest desk
        int farther = width == Browser.PHONE_PX ? NARROWEST_PX : WIDEST_PX;
        browser.resize(farther);
        all.assertThat(settledPx(browser, farther))
                .as(name + ": content in px at " + farther + ", past the screen " + browser.pastPx(farther))
                .isLessThanOrEqualTo(farther);
        browser.resize((int) width);
        all.assertThat(browser.accessibilityViolations())
                .as(name + ": accessibility")
                .isEmpty();
        all.assertThat(browser.complaints().stream()
                        .filter(line -> !(name.startsWith("missing") && line.contains("404")))
                        .toList())
                .as(name + ": console")
                .isEmpty();
        all.assertThat(browser.requests())
                .as(name + ": hosts")
                .allMatch(uri -> uri.getHost().equals(server.getHost()));
        browser.screenshot(name);
    }

    /** A drawing follows the width of the window a moment later. */
    private static long settledPx(Browser browser, int widthPx) {
        long deadline = System.nanoTime() + Duration.ofSeconds(3).toNanos();
        while (browser.widthPx() > widthPx && System.nanoTime() < deadline) {
            LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
        }
        return browser.widthPx();
    }
}
