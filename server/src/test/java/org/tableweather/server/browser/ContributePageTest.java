package org.tableweather.server.browser;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** A folder is handed over in the browser: the findings by row first, nothing kept until it is contributed. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
@NeedsBrowser
class ContributePageTest {
    private static final String CONTRIBUTIONS = "/api/v1/contributions";

    @TestHTTPResource
    URI server;

    @TempDir
    Path folders;

    @Test
    void aSoundFolderIsCheckedThenContributed() throws IOException {
        Path folder = Examples.folder("Browser one").writeTo(folders.resolve("one"));
        String token = Tokens.of("Browser one", "contributor", "contribute");
        int before = kept();
        try (Browser browser = open(Browser.DESK_PX)) {
            // the folder itself: the zip is made in the browser
            browser.find("#folder").sendKeys(folder.toString());
            browser.until("document.querySelector('#chosen').textContent.includes('trials.csv')");
            browser.press("button[value=check]");
            browser.until("document.querySelector('#outcome').dataset.outcome === 'sound'");
            assertThat(browser.find("#outcome").getText()).contains("30 attempts in 2 sessions", "Nothing was kept");
            assertThat(kept()).isEqualTo(before);
            browser.screenshot("contribute-sound-1440");
            browser.find("#token").sendKeys(token);
            browser.press("button[value=contribute]");
            browser.until("document.querySelector('#outcome').dataset.outcome === 'contributed'");
            assertThat(browser.find("#outcome").getText()).contains("Its sessions have joined the pool");
            assertThat(kept()).isEqualTo(before + 1);
            browser.until("document.querySelector('#token').value === ''");
            assertThat(browser.address()).doesNotContain("tw_");
            assertThat(browser.<String>script("return JSON.stringify([localStorage, sessionStorage])"))
                    .doesNotContain("tw_");
            assertThat(browser.accessibilityViolations()).isEmpty();
            assertThat(browser.complaints()).isEmpty();
            browser.press("button[value=check]");
            browser.until("document.querySelector('#outcome').dataset.outcome === 'sound'");
            browser.find("#token").sendKeys(token);
            browser.press("button[value=contribute]");
            browser.until("document.querySelector('#outcome').textContent.includes('was here already')");
            assertThat(kept()).isEqualTo(before + 1);
        }
    }

    @Test
    void whatIsBrokenIsToldByRowAndNothingIsKept() throws IOException {
        byte[] broken = Examples.pack(broken("Browser two"));
        Path archive = Files.write(folders.resolve("two.zip"), broken);
        int before = kept();
        try (Browser browser = open(Browser.PHONE_PX)) {
            browser.find("#archive").sendKeys(archive.toString());
            browser.until("document.querySelector('#chosen').textContent.includes('two.zip')");
            browser.press("button[value=check]");
            browser.until("document.querySelector('#outcome').dataset.outcome === 'refused'");
            // row, column, value, bound, remedy, source
            assertThat(browser.find("#outcome .finding").getText())
                    .contains("trials.csv, row 4", "= wet", "write the number alone", "digits with a decimal point")
                    .contains("structure.number");
            assertThat(browser.widthPx())
                    .as(browser.pastPx(Browser.PHONE_PX) + "")
                    .isEqualTo(Browser.PHONE_PX);
            assertThat(browser.accessibilityViolations()).isEmpty();
            assertThat(browser.complaints()).isEmpty();
            browser.screenshot("contribute-refused-390");
        }
        assertThat(kept()).isEqualTo(before);
        assertThat(leftBehind()).isEmpty();
    }

    @Test
    void badInputIsToldInWords() throws IOException {
        Path archive = Files.write(folders.resolve("three.zip"), Examples.archive("Browser three"));
        int before = kept();
        try (Browser browser = open(Browser.PHONE_PX)) {
            browser.press("button[value=check]");
            assertThat(browser.find("#outcome").getText()).contains("Choose a folder or its .zip first");
            browser.find("#archive").sendKeys(archive.toString());
            browser.until("document.querySelector('#chosen').textContent.includes('three.zip')");
            browser.press("button[value=contribute]");
            assertThat(browser.find("#outcome").getText()).contains("The token is missing");
            browser.find("#token").sendKeys("tw_not_a_token");
            browser.press("button[value=contribute]");
            browser.until("document.querySelector('#outcome').textContent.includes('does not know the token')");
            browser.screenshot("contribute-bad-token-390");
            browser.script("""
                    const transfer = new DataTransfer();
                    transfer.items.add(new File(['a,b'], 'trials.csv'));
                    document.querySelector('#hand-over').dispatchEvent(new DragEvent('drop', {dataTransfer: transfer, bubbles: true}));
                    """);
            browser.until("document.querySelector('#chosen').textContent.includes('trials.csv; packed')");
            browser.press("button[value=check]");
            browser.until("document.querySelector('#outcome').textContent.includes('contribution.json')");
            browser.offline(true);
            browser.press("button[value=check]");
            browser.until("document.querySelector('#outcome').textContent.includes('nothing is lost')");
        }
        assertThat(kept()).isEqualTo(before);
    }

    @Test
    void theFormDoesTheSameWithoutScript() throws Exception {
        byte[] sound = Examples.archive("Browser four");
        assertThat(form(sound, "check", "")).contains("200", "data-outcome=\"sound\"");
        assertThat(form(new byte[0], "check", "")).contains("400", "No file was chosen");
        assertThat(form(sound, "contribute", "")).contains("401", "The token is missing");
        assertThat(form("no zip".getBytes(StandardCharsets.UTF_8), "check", ""))
                .contains("200", "data-outcome=\"refused\"");
        String reader = Tokens.of("Browser reader", "curator", "curate");
        assertThat(form(sound, "contribute", reader)).contains("403", "scope contribute");
        String token = Tokens.of("Browser four", "contributor", "contribute");
        assertThat(form(Examples.pack(broken("Browser four")), "contribute", token))
                .contains("422", "row 4");
        assertThat(form(sound, "contribute", token)).contains("200", "data-outcome=\"contributed\"");
        given().get("/contribute?what=this").then().statusCode(400);
        // a form that does not say its length is not read
        given().multiPart("archive", "folder.zip", sound)
                .post("/contribute")
                .then()
                .statusCode(411);
    }

    @Test
    void programsCheckWithoutKeeping() throws IOException {
        int before = kept();
        given().contentType("application/zip")
                .body(Examples.pack(broken("Browser five")))
                .post("/api/v1/checks")
                .then()
                .statusCode(200)
                .body("report.refused", equalTo(true))
                .body("report.findings.row", hasItem(4));
        given().contentType("application/json")
                .body("{}")
                .post("/api/v1/checks")
                .then()
                .statusCode(415);
        assertThat(kept()).isEqualTo(before);
        assertThat(leftBehind()).isEmpty();
    }

    private static ExampleFolder broken(String contributor) {
        String trials = Examples.folder(contributor).get("trials.csv");
        return Examples.folder(contributor).put("trials.csv", wet(trials));
    }

    /** Row 4 with a word where the last number stands. */
    private static String wet(String trials) {
        List<String> lines = trials.lines().toList();
        int column = List.of(lines.get(0).split(",")).indexOf("rebound_angle_deg");
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            String[] cells = lines.get(i).split(",", -1);
            if (i == 3) {
                cells[column] = "wet";
            }
            text.append(String.join(",", cells)).append('\n');
        }
        return text.toString();
    }

    private Browser open(int widthPx) {
        Browser browser = Browser.open(widthPx);
        browser.go(server.resolve("/contribute").toString());
        browser.until("document.querySelector('#folder')");
        return browser;
    }

    /** What the form sends without script; status and page. */
    private String form(byte[] archive, String action, String token) throws IOException, InterruptedException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        String part = "--limit\r\nContent-Disposition: form-data; name=\"%s\"%s\r\n\r\n";
        body.writeBytes(part.formatted("archive", "; filename=\"folder.zip\"\r\nContent-Type: application/zip")
                .getBytes(StandardCharsets.UTF_8));
        body.writeBytes(archive);
        body.writeBytes(("\r\n" + part.formatted("action", "") + action + "\r\n" + part.formatted("token", "") + token
                        + "\r\n--limit--\r\n")
                .getBytes(StandardCharsets.UTF_8));
        HttpResponse<String> answer = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(server.resolve("/contribute"))
                                .header("Content-Type", "multipart/form-data; boundary=limit")
                                .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray()))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
        return answer.statusCode() + " " + answer.body();
    }

    /** Contributions that the server knows, refused ones too. */
    private static int kept() {
        return given().queryParam("limit", 1000)
                .get(CONTRIBUTIONS)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getList("contributions")
                .size();
    }

    private static List<Path> leftBehind() throws IOException {
        Path incoming = Path.of(ConfigProvider.getConfig().getValue("tableweather.data", String.class), "incoming");
        try (var files = Files.list(incoming)) {
            return files.toList();
        }
    }
}
