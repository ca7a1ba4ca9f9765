package org.tableweather.cli.journey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.folder.BrokenFolders;

/** The whole way as a newcomer goes it: the demonstration, then commands against its server, then its end. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class DemoJourney {
    private static final Pattern PAGE = Pattern.compile("page: +(http://\\S+)/");
    private static final int ATTEMPTS = 12 * 5 * 32;

    @TempDir
    private static Path directory;

    private static Shell shell;
    private static Shell.Result first;
    private static String url;

    @BeforeAll
    static void runTheDemo() throws Exception {
        shell = new Shell(directory);
        first = shell.run("demo", "--data", "demo", "--keep-folders", "folders");
        assertThat(first.exitCode()).as(first.err()).isZero();
        Matcher page = PAGE.matcher(first.out());
        assertThat(page.find()).as(first.out()).isTrue();
        url = page.group(1);
    }

    @AfterAll
    static void endTheServer() throws Exception {
        shell.run("demo", "--data", "demo", "--stop");
    }

    @Test
    @Order(1)
    void endsWithTheTruthBesideTheEstimatesTheCurveAndThePage() throws Exception {
        assertThat(first.out())
                .contains("INVENTED DATA")
                .contains("12 of 12 contributions accepted")
                .containsPattern("humidity +-0\\.9000 +-?\\d")
                .containsPattern("room\\.humidity +0\\.2500 +\\d")
                .contains("curve:  " + Path.of("demo", "curve.svg"))
                .contains("stop:   tableweather demo --stop --data demo");
        assertThat(Files.readString(directory.resolve("demo/curve.svg")))
                .startsWith("<svg ")
                .contains("INVENTED DATA");
        assertThat(status(url + "/health/ready")).isEqualTo(200);
    }

    @Test
    @Order(2)
    void isHarmlessTwice() throws Exception {
        Shell.Result again = shell.run("demo", "--data", "demo");

        assertThat(again.exitCode()).as(again.err()).isZero();
        assertThat(again.err()).contains("using the server that runs at " + url);
        assertThat(again.out()).isEqualTo(first.out());
        assertThat(trialsOnTheServer()).isEqualTo(ATTEMPTS);

        String json = shell.run("demo", "--data", "demo", "--json").out();
        assertThat(json)
                .contains("\"invented\" : true")
                .contains("\"page\" : \"" + url + "/\"")
                .contains("\"humidityDeg\" : -0.9");
        assertThat(json.split("\"state\" : \"accepted\"", -1)).hasSize(1 + 12);
    }

    @Test
    @Order(3)
    void givesTheSameBytesFromFoldersAndFromTheServer() throws Exception {
        List<Object> local = new ArrayList<>(List.of("analyze", "rebound-humidity", "--json", "--data"));
        try (Stream<Path> folders = Files.list(directory.resolve("folders"))) {
            folders.sorted().forEach(local::add);
        }
        String fromFolders = shell.run(local.toArray()).out();
        String fromServer = shell.run("analyze", "rebound-humidity", "--json", "--server", url)
                .out();

        assertThat(fromFolders).contains("\"outcome\" : \"estimated\"");
        assertThat(fromServer).isEqualTo(fromFolders);
    }

    @Test
    @Order(4)
    void takesAContributionOnceAndNoFaultyOne() throws Exception {
        Path token = directory.resolve("token");
        Path operator = directory.resolve("demo/operator-token");
        assertThat(shell.run("account", "add", "guest", "--server", url, "--token-file", operator, "--into", token)
                        .exitCode())
                .isZero();
        shell.run("new", "guest-hall", "--name", "Guest", "--sessions", "2");

        Shell.Result once = shell.run("contribute", "guest-hall", "--server", url, "--token-file", token);
        Shell.Result twice = shell.run("contribute", "guest-hall", "--server", url, "--token-file", token);

        assertThat(once.exitCode()).as(once.err()).isZero();
        assertThat(once.out()).contains("accepted as contribution 13");
        assertThat(twice.out()).isEqualTo(once.out());
        Path faulty = BrokenFolders.all().stream()
                .filter(broken -> broken.check().equals("structure.duplicate-trial"))
                .findFirst()
                .orElseThrow()
                .writeTo(directory);
        Shell.Result refused = shell.run("contribute", faulty, "--no-check", "--server", url, "--token-file", token);
        assertThat(refused.exitCode()).as(refused.err()).isEqualTo(3);
        assertThat(refused.err()).contains("structure.duplicate-trial");
        assertThat(trialsOnTheServer()).isEqualTo(ATTEMPTS + 10);
    }

    @Test
    @Order(5)
    void comparesARoomThatWasNotContributed() throws Exception {
        Shell.Result compared = shell.run("compare", "elm", "--server", url, "--json");
        Shell.Result own = shell.run("compare", "--data", "folders/elm", "--server", url, "--json");

        assertThat(compared.exitCode()).as(compared.err()).isZero();
        assertThat(compared.out()).contains("\"room\" : \"invented-room-elm/elm\"");
        // the folder's sessions are on the server already: they count once, and the answer is the same
        assertThat(own.out()).isEqualTo(compared.out());
    }

    @Test
    @Order(6)
    void findsWithFiltersAndEndsQuietlyInAPipe() throws Exception {
        assertThat(shell.run("find", "sessions", "--room", "elm", "--rh-from", "66", "--server", url)
                        .out())
                .contains("invented-room-elm/elm/elm-")
                .doesNotContain("alder");
        assertThat(shell.run("find", "rooms", "--csv", "--server", url).out().lines())
                .hasSize(14);
        assertThat(shell.firstLine("find", "trials", "--all", "--json", "--server", url))
                .isEqualTo("{\"trials\" : [");
    }

    @Test
    @Order(7)
    void drawsFromTheServer() throws Exception {
        Shell.Result drawn = shell.run("curve", "--set", "shot=kick-3-rail", "--server", url);

        assertThat(drawn.exitCode()).as(drawn.err()).isZero();
        assertThat(drawn.out()).contains("INVENTED DATA").contains("relative humidity, %");
    }

    @Test
    @Order(8)
    void keepsAResultAndVerifiesIt() throws Exception {
        Shell.Result kept = shell.run("analyze", "rebound-humidity", "--keep", "--json", "--server", url);
        Shell.Result asked = shell.run("analyze", "rebound-humidity", "--json", "--server", url);
        assertThat(kept.exitCode()).as(kept.err()).isZero();
        assertThat(kept.out()).isEqualTo(asked.out());
        Matcher run = Pattern.compile("rerun ([0-9a-f]{64})").matcher(kept.err());
        assertThat(run.find()).as(kept.err()).isTrue();

        Shell.Result verified = shell.run("rerun", run.group(1), "--server", url);

        assertThat(verified.exitCode()).as(verified.err()).isZero();
        assertThat(verified.out())
                .contains("made again by the server: the same bytes")
                .contains("made again here:          the same bytes")
                .endsWith("verified\n");
    }

    @Test
    @Order(9)
    void stopsItsServerAndNoOther() throws Exception {
        assertThat(shell.run("demo", "--data", "nowhere", "--stop").err()).contains("no server of a demo runs");
        assertThat(status(url + "/health/ready")).isEqualTo(200);

        assertThat(shell.run("demo", "--data", "demo", "--stop").exitCode()).isZero();

        assertThat(shell.run("find", "rooms", "--server", url).exitCode()).isEqualTo(4);
    }

    private static long trialsOnTheServer() throws IOException, InterruptedException {
        return shell.run("find", "trials", "--all", "--csv", "--server", url)
                        .out()
                        .lines()
                        .count()
                - 1;
    }

    private static int status(String address) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(address)).build();
        return HttpClient.newHttpClient()
                .send(request, HttpResponse.BodyHandlers.discarding())
                .statusCode();
    }
}
