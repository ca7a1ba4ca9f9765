package org.tableweather.server.browser;

import java.net.URI;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.support.ui.Select;

/** The page for logging as a person handles it: with a finger, with the keyboard. */
final class TableScreen implements AutoCloseable {
    /** A phone's screen less the browser's own bars is not known; this is the whole one. */
    static final int PHONE_HEIGHT_PX = 844;

    // longer than a double press after the attempt before
    private static final long UNHURRIED_MS = 750;

    /** Where a place of the table is on the screen, from the lines and the sights that are drawn: not by the page's own code. */
    private static final String TO_SCREEN = """
            document.querySelector('#table').scrollIntoView({block: 'center'});
            const bed = document.querySelector('#table .bed').getBoundingClientRect();
            const upright = bed.height > bed.width;
            const [x, y] = [arguments[0] / 8, arguments[1] / 4];
            return upright ? [bed.right - y * bed.width, bed.bottom - x * bed.height]
              : [bed.left + x * bed.width, bed.bottom - y * bed.height];
            """;

    private final Browser browser;

    private TableScreen(Browser browser) {
        this.browser = browser;
    }

    static TableScreen open(URI server, int widthPx, int heightPx) {
        Browser browser = Browser.open(widthPx);
        browser.resize(widthPx, heightPx);
        if (widthPx <= Browser.PHONE_PX) {
            browser.command("Emulation.setTouchEmulationEnabled", Map.of("enabled", true));
        }
        TableScreen screen = new TableScreen(browser);
        browser.go(server.resolve("/table").toString());
        browser.until("document.body.dataset.offline");
        return screen;
    }

    Browser browser() {
        return browser;
    }

    /** Begins a session with the least that is needed. */
    void begin(String name, String room, String shot) {
        type("#name", name);
        type("#room", room);
        type("#instrument", "hall thermohygrometer");
        new Select(browser.find("#shot")).selectByValue(shot);
        browser.press("#begin button[type=submit]");
        browser.until("document.body.dataset.view === 'logging'");
    }

    void readClimate(String temp, String rh) {
        browser.press("#climate-button");
        type("#temp", temp);
        type("#rh", rh);
        browser.press("#climate button[type=submit]");
    }

    void type(String field, String text) {
        browser.find(field).clear();
        browser.find(field).sendKeys(text);
    }

    /** Touches the table where this place is drawn, and waits for the mark. */
    void tap(double xDia, double yDia) {
        long before = marks();
        touch(xDia, yDia);
        browser.until("document.querySelectorAll('#table .mark').length === " + (before + 1));
    }

    /** Touches without waiting, as a finger does that bounces. */
    void touch(double xDia, double yDia) {
        List<Number> at = browser.script(TO_SCREEN, xDia, yDia);
        browser.command(
                "Input.dispatchTouchEvent",
                Map.of("type", "touchStart", "touchPoints", List.of(Map.of("x", at.get(0), "y", at.get(1)))));
        browser.command("Input.dispatchTouchEvent", Map.of("type", "touchEnd", "touchPoints", List.of()));
    }

    /** The whole path of three rails and the landing at this diamond of the near rail. */
    void threeRails(double landingDia) {
        tap(5.6, 0);
        tap(8, 1.5);
        tap(5.4, 4);
        tap(landingDia, 0);
    }

    /** Presses made, missed or keep, and waits for the next attempt. */
    void keep(String button) {
        int number = Integer.parseInt(tally().replaceAll("\\D", ""));
        pause();
        browser.press(button);
        browser.until("document.querySelector('#tally').textContent === 'Attempt " + (number + 1) + "'");
    }

    /** Presses keep with nothing to keep, no sooner than a double press would be over. */
    void keepNothing() {
        pause();
        browser.press("#keep");
        untilPrompt("Nothing is marked yet");
    }

    /** Presses undo, and waits until so many marks are there. */
    void undo(int marks) {
        browser.press("#undo");
        browser.until("document.querySelectorAll('#table .mark').length === " + marks);
    }

    /** Waits until the line above the table says this. */
    void untilPrompt(String words) {
        browser.until("document.querySelector('#prompt').textContent.includes('" + words + "')");
    }

    String tally() {
        return browser.find("#tally").getText();
    }

    long marks() {
        return browser.<Number>script("return document.querySelectorAll('#table .mark').length")
                .longValue();
    }

    private static void pause() {
        try {
            Thread.sleep(UNHURRIED_MS);
        } catch (InterruptedException e) {
            throw new IllegalStateException("a test is not interrupted", e);
        }
    }

    @Override
    public void close() {
        browser.close();
    }
}
