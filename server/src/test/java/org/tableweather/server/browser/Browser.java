package org.tableweather.server.browser;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A headless Chromium that keeps account of what a page asks for and complains of. */
final class Browser implements AutoCloseable {
    /** A phone held upright. */
    static final int PHONE_PX = 390;

    /** A desk. */
    static final int DESK_PX = 1440;

    private static final Path SCREENSHOTS = Path.of("target", "screenshots");
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final Duration POLL = Duration.ofMillis(50);
    private static final ObjectMapper JSON = new ObjectMapper();

    private final ChromeDriver driver;
    private final List<String> requests = new ArrayList<>();

    private Browser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** How wide the page is, px: more than the screen when something does not fit. */
    long widthPx() {
        return ((Number) script("return document.documentElement.scrollWidth")).longValue();
    }

    /** What reaches past this width, outside of what scrolls by itself. */
    List<String> pastPx(long widthPx) {
        return script(
                "return [...document.querySelectorAll('main *')].filter(e => !e.closest('.scroll, svg, .skip')"
                        + " && e.getBoundingClientRect().right > arguments[0] + 1).slice(0, 5).map(e => e.outerHTML.slice(0, 120))",
                widthPx);
    }

    /** Where Debian, or another system, keeps the browser; empty when there is none. */
    static Optional<Path> program(String variable, String... places) {
        return Stream.concat(Stream.ofNullable(System.getenv(variable)), Stream.of(places))
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst();
    }

    static Optional<Path> chromium() {
        return program(
                "TABLEWEATHER_CHROMIUM", "/usr/bin/chromium", "/usr/bin/google-chrome", "/usr/bin/chromium-browser");
    }

    static Optional<Path> chromedriver() {
        return program("TABLEWEATHER_CHROMEDRIVER", "/usr/bin/chromedriver", "/usr/local/bin/chromedriver");
    }

    /**
     * Starts a browser.
     *
     * @param widthPx of the window
     * @param arguments more of them, such as {@code --force-dark-mode}
     */
    static Browser open(int widthPx, String... arguments) {
        ChromeOptions options = new ChromeOptions();
        options.setBinary(chromium().orElseThrow().toString());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-gpu",
                "--disable-background-networking",
                "--hide-scrollbars");
        options.addArguments(arguments);
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(chromedriver().orElseThrow().toFile())
                .usingAnyFreePort()
                .build();
        Browser browser = new Browser(new ChromeDriver(service, options));
        browser.resize(widthPx);
        return browser;
    }

    /** Sets the width that a page sees, which may be narrower than a window can be. */
    void resize(int widthPx) {
        resize(widthPx, 1000);
    }

    void resize(int widthPx, int heightPx) {
        command(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", widthPx, "height", heightPx, "deviceScaleFactor", 1, "mobile", widthPx < 600));
    }

    /** Lets downloads go to a folder. */
    void downloadTo(Path folder) {
        command("Browser.setDownloadBehavior", Map.of("behavior", "allow", "downloadPath", folder.toString()));
    }

    /** Opens another tab and goes there; gives the one that was left. */
    String openTab() {
        String left = driver.getWindowHandle();
        driver.switchTo().newWindow(WindowType.TAB);
        return left;
    }

    /** Goes to a tab; gives the one that was left. */
    String toTab(String tab) {
        String left = driver.getWindowHandle();
        driver.switchTo().window(tab);
        return left;
    }

    void reload() {
        driver.navigate().refresh();
    }

    /** Cuts the connection, or mends it. */
    void offline(boolean cut) {
        command("Network.enable", Map.of());
        command(
                "Network.emulateNetworkConditions",
                Map.of("offline", cut, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
    }

    void command(String name, Map<String, Object> parameters) {
        driver.executeCdpCommand(name, parameters);
    }

    void go(String address) {
        driver.get(address);
    }

    String address() {
        return driver.getCurrentUrl();
    }

    String title() {
        return driver.getTitle();
    }

    WebElement find(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    /** Presses a button where it stands in the middle of the screen, so that nothing that moves comes between. */
    void press(String css) {
        WebElement button = find(css);
        script("arguments[0].scrollIntoView({block: 'center'})", button);
        button.click();
    }

    /** Waits until a script gives something that holds. */
    void until(String script) {
        new WebDriverWait(driver, PATIENCE, POLL)
                .withMessage(() -> "until " + script + " at " + address() + "; console: " + complaints())
                .until(any -> Boolean.TRUE.equals(driver.executeScript("return Boolean(" + script + ")")));
    }

    @SuppressWarnings("unchecked") // the caller knows what its script gives
    <T> T script(String script, Object... arguments) {
        return (T) driver.executeScript(script, arguments);
    }

    /** What axe-core finds against the rules of WCAG 2 A and AA and good practice: id, and where. */
    List<String> accessibilityViolations() {
        Results results = new AxeBuilder().analyze(driver);
        return results.getViolations().stream().map(Browser::words).toList();
    }

    private static String words(Rule rule) {
        return rule.getId() + ": "
                + rule.getNodes().stream().limit(3).map(node -> node.getHtml()).toList();
    }

    /** Errors and warnings in the console since the last call. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** Every address asked for so far, over any protocol that leaves the page. */
    List<URI> requests() {
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE).getAll()) {
            try {
                JsonNode message = JSON.readTree(entry.getMessage()).path("message");
                if (message.path("method").asText().equals("Network.requestWillBeSent")) {
                    requests.add(
                            message.path("params").path("request").path("url").asText());
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
        return requests.stream()
                .filter(url -> url.startsWith("http") || url.startsWith("ws"))
                .map(URI::create)
                .toList();
    }

    /** Keeps the whole page as a picture in the build folder, to be looked at. */
    void screenshot(String name) {
        try {
            Files.createDirectories(SCREENSHOTS);
            long height = Math.min(6000, ((Number) script("return document.documentElement.scrollHeight")).longValue());
            long width = widthPx();
            command(
                    "Emulation.setDeviceMetricsOverride",
                    Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
            Files.write(SCREENSHOTS.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
            resize((int) width);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
