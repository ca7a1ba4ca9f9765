package org.tableweather.server.journey;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.tableweather.server.Tokens.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseVerifier;
import org.tableweather.release.VerifyReport;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.server.SampleLeague;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** One whole story: nothing to release, a release, fetched and verified and tampered with, a withdrawal, a second release. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
class ReleaseTest {
    private static final String RELEASES = "/api/v1/releases";
    private static final int PATIENCE = 600;

    @TempDir
    Path root;

    @Test
    void fromNothingToASecondRelease() throws IOException {
        String operator = Tokens.operator();
        asked(operator).then().statusCode(409).body("detail", containsString("nothing to release"));
        given().get(RELEASES).then().body("releases", hasSize(0));

        List<Integer> contributions = contributeAll();
        String contributor = Tokens.of("bystander", "contributor", "contribute");
        asked(contributor).then().statusCode(403);
        as(operator)
                .contentType("application/json")
                .body(Map.of("title", " "))
                .post(RELEASES)
                .then()
                .statusCode(400);
        assertThat(freeze(operator)).isEqualTo(1);

        Path first = fetch(1);
        assertThat(ReleaseVerifier.verify(first).faults()).isEmpty();
        Manifest manifest = ReleaseFolder.open(first).manifest();
        assertThat(manifest.totals().trials())
                .isEqualTo(SampleLeague.ROOMS * SampleLeague.SESSIONS * SampleLeague.TRIALS);
        filesAreServedWithCare(manifest);
        String pooled = given().get("/api/v1/analyses/rebound-humidity").asString();
        assertThat(given().get(RELEASES + "/1/analyses/rebound-humidity").asString())
                .isEqualTo(pooled);
        assertThat(fromFolder(first)).isEqualTo(pooled);
        given().get(RELEASES + "/1/analyses/rebound-humidity?colour=green")
                .then()
                .statusCode(400);

        as(Tokens.of("curator", "curator", "curate"))
                .post("/api/v1/contributions/" + contributions.get(1) + "/withdraw?reason=wrong hygrometer")
                .then()
                .statusCode(200)
                .body("withdrawalReason", equalTo("wrong hygrometer"));
        assertThat(given().get("/api/v1/analyses/rebound-humidity").asString()).isNotEqualTo(pooled);
        assertThat(given().get(RELEASES + "/1/analyses/rebound-humidity").asString())
                .as("what was withdrawn stays in the release that has it")
                .isEqualTo(pooled);

        assertThat(freeze(operator)).isEqualTo(2);
        Path second = fetch(2);
        assertThat(ReleaseVerifier.verify(second).faults()).isEmpty();
        Manifest next = ReleaseFolder.open(second).manifest();
        assertThat(next.changes()).isEqualTo(new Manifest.ChangeCounts(0, 1, SampleLeague.ROOMS - 1));
        assertThat(next.previous().orElseThrow().hash()).isEqualTo(manifest.hash());
        assertThat(Files.readString(second.resolve("changes.json"))).contains("wrong hygrometer");
        assertThat(ReleaseVerifier.verify(fetch(1)).hash()).isEqualTo(manifest.hash());
        given().get(RELEASES).then().body("releases.number", equalTo(List.of(2, 1)));

        aChangedByteIsNamed(first, manifest);
    }

    private List<Integer> contributeAll() throws IOException {
        List<Integer> ids = new ArrayList<>();
        List<Path> folders = SampleLeague.writeTo(root.resolve("league"));
        for (int room = 0; room < folders.size(); room++) {
            Path archive = root.resolve(room + ".zip");
            ContributionWriter.pack(folders.get(room), archive);
            ids.add(as(Tokens.of(SampleLeague.contributor(room), "contributor", "contribute"))
                    .contentType("application/zip")
                    .body(Files.readAllBytes(archive))
                    .post("/api/v1/contributions")
                    .then()
                    .statusCode(201)
                    .extract()
                    .path("id"));
        }
        return ids;
    }

    private static io.restassured.response.Response asked(String token) {
        return as(token)
                .contentType("application/json")
                .body(Map.of("title", "Sample league"))
                .post(RELEASES);
    }

    private static int freeze(String operator) {
        int number = asked(operator).then().statusCode(202).extract().path("number");
        String state = "building";
        for (int tried = 0; state.equals("building") && tried < PATIENCE; tried++) {
            pause();
            state = given().get(RELEASES + "/" + number)
                    .then()
                    .statusCode(200)
                    .extract()
                    .path("state");
        }
        assertThat(state).isEqualTo("frozen");
        return number;
    }

    private static void pause() {
        try {
            Thread.sleep(100);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private Path fetch(int number) throws IOException {
        Path folder = Files.createTempDirectory(root, "release");
        byte[] manifest = file(number, Manifest.FILE);
        Files.write(folder.resolve(Manifest.FILE), manifest);
        Files.write(folder.resolve(Manifest.HASH_FILE), file(number, Manifest.HASH_FILE));
        for (Manifest.FileEntry entry : Manifest.read(manifest).files()) {
            Path target = folder.resolve(entry.path());
            Files.createDirectories(target.getParent());
            Files.write(target, file(number, entry.path()));
        }
        return folder;
    }

    private static byte[] file(int number, String path) {
        return given().get(RELEASES + "/" + number + "/files/" + path)
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    private static void filesAreServedWithCare(Manifest manifest) {
        String files = RELEASES + "/1/files/";
        Manifest.FileEntry some = manifest.files().get(0);
        given().get(files + some.path())
                .then()
                .header("ETag", "\"" + some.sha256() + "\"")
                .header("Content-Length", Long.toString(some.bytes()));
        byte[] rest = given().header("Range", "bytes=10-")
                .get(files + some.path())
                .then()
                .statusCode(206)
                .extract()
                .asByteArray();
        assertThat(rest).hasSize((int) some.bytes() - 10);
        given().header("If-None-Match", "\"" + some.sha256() + "\"")
                .get(files + some.path())
                .then()
                .statusCode(304);
        given().urlEncodingEnabled(false)
                .get(files + "%2e%2e/%2e%2e/operator-token")
                .then()
                .statusCode(404);
        given().get(files + "nothing.txt").then().statusCode(404);
        given().get(RELEASES + "/9").then().statusCode(404);
    }

    private static String fromFolder(Path folder) throws IOException {
        return concluded(
                AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow(), ReleaseFolder.open(folder));
    }

    private static <S> String concluded(Analyzer<S> analyzer, ReleaseFolder release) throws IOException {
        List<SessionSummary<S>> summaries = new ArrayList<>();
        release.sessions((session, trials) -> summaries.add(new SessionSummary<>(
                session.roomKey(),
                session.sessionKey(),
                session.digest(),
                session.invented(),
                trials.size(),
                analyzer.summarise(session, trials))));
        AnalysisRun run = AnalysisRun.conclude(analyzer, Summaries.of(summaries), Map.of());
        return new String(AnalysisJson.bytes(run), StandardCharsets.UTF_8);
    }

    private static void aChangedByteIsNamed(Path folder, Manifest manifest) throws IOException {
        for (Manifest.FileEntry entry : manifest.files()) {
            Path file = folder.resolve(entry.path());
            byte[] bytes = Files.readAllBytes(file);
            bytes[bytes.length / 2] ^= 1;
            Files.write(file, bytes);
            assertThat(ReleaseVerifier.verify(folder).faults())
                    .extracting(VerifyReport.Fault::path)
                    .containsExactly(entry.path());
            bytes[bytes.length / 2] ^= 1;
            Files.write(file, bytes);
        }
    }
}
