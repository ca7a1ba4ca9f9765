package org.tableweather.server.journey;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.tableweather.server.Tokens.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.analyzers.host.AnalysisJson;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.release.Manifest;
import org.tableweather.release.ReleaseBuilder;
import org.tableweather.release.ReleaseFacts;
import org.tableweather.release.ReleaseFolder;
import org.tableweather.release.ReleaseInput;
import org.tableweather.release.ReleaseVerifier;
import org.tableweather.release.VerifyReport;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.server.SampleLeague;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;
import org.tableweather.server.datafolder.DataFolder;

/** One whole story: nothing to release, a release, fetched and verified and tampered with, a withdrawal, a second release. */
@QuarkusTest
@QuarkusTestResource(value = TestData.class, restrictToAnnotatedClass = true)
class ReleaseTest {
    private static final String RELEASES = "/api/v1/releases";
    private static final int PATIENCE = 600;

    @TempDir
    Path root;

    @Inject
    DataFolder data;

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
        theFoldersGiveTheSameBytes(first, manifest);
        filesAreServedWithCare(manifest);
        given().get("/releases/1")
                .then()
                .statusCode(200)
                .body(containsString("readings of the climate"))
                .body(containsString("marked points"));
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
        withoutAnArchiveThereIsNoRelease(operator, manifest);
    }

    private List<Integer> contributeAll() throws IOException {
        List<Integer> ids = new ArrayList<>();
        List<Path> folders = SampleLeague.writeTo(root.resolve("league"));
        recordMore(folders.get(0));
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

    /** Readings, marked points and a camera for the first contribution. */
    private static void recordMore(Path folder) throws IOException {
        Path json = folder.resolve("contribution.json");
        Files.writeString(
                json,
                Files.readString(json)
                        .replace("\"table\": \"t1\", ", "\"table\": \"t1\", \"instrument\": \"h1\", ")
                        .replace("\"sessions\": [", """
                                "instruments": [{"id": "h1", "quantities": ["temperature", "humidity"]}],
                                "marks": [{"camera": "cam1", "errorPx": 1.5, "points": [
                                  {"xDia": 0, "yDia": 0, "xPx": 100, "yPx": 700},
                                  {"xDia": 8, "yDia": 0, "xPx": 1370, "yPx": 700},
                                  {"xDia": 8, "yDia": 4, "xPx": 1370, "yPx": 65},
                                  {"xDia": 0, "yDia": 4, "xPx": 100, "yPx": 65}]}],
                                "sessions": ["""));
        Files.writeString(folder.resolve("climate.csv"), """
                instrument,time,temp_f,rh_pct,pressure_hpa,placement
                h1,2026-01-12T18:10:00+01:00,68.5,41.5,1003.2,room
                h1,2026-01-12T18:00:00.0000005+01:00,68,41,,
                h1,2026-01-12T18:00:00+01:00,20,88,,outdoor
                """);
        Files.writeString(folder.resolve("contacts.csv"), """
                session,trial,seq,point,rail,x_px,y_px,camera
                s0,2,1,start,,301.6,382.5,cam1
                s0,2,2,rail,near,604.8,685.7,cam1
                s0,2,3,rail,far,1200.1,79.3,cam1
                """);
    }

    /** What the database and the kept archives give is what the contributed archives give, byte by byte. */
    private void theFoldersGiveTheSameBytes(Path first, Manifest manifest) throws IOException {
        Path local = root.resolve("local");
        List<Path> archives = new ArrayList<>();
        for (int room = 0; room < SampleLeague.ROOMS; room++) {
            archives.add(root.resolve(room + ".zip"));
        }
        ReleaseFacts facts = new ReleaseFacts(1, manifest.title(), manifest.date(), Optional.empty(), List.of());
        Manifest own = ReleaseBuilder.build(ReleaseInput.ofFolders(archives), facts, local);
        List<String> paths = own.files().stream().map(Manifest.FileEntry::path).toList();
        assertThat(paths)
                .containsAll(
                        List.of("contacts/room_group=000/part-0.parquet", "readings/room_group=000/part-0.parquet"))
                .anyMatch(path -> path.startsWith("cameras/contributions/"))
                .isEqualTo(
                        manifest.files().stream().map(Manifest.FileEntry::path).toList());
        for (String path : paths) {
            // as one character a byte, so that a difference can be read
            assertThat(Files.readString(first.resolve(path), StandardCharsets.ISO_8859_1))
                    .as(path)
                    .isEqualTo(Files.readString(local.resolve(path), StandardCharsets.ISO_8859_1));
        }
        assertThat(own.hash()).isEqualTo(manifest.hash());
    }

    private void withoutAnArchiveThereIsNoRelease(String operator, Manifest manifest) throws IOException {
        String recorded = manifest.files().stream()
                .map(Manifest.FileEntry::path)
                .filter(path -> path.startsWith("cameras/"))
                .findFirst()
                .orElseThrow()
                .replaceAll(".*/|\\.json", "");
        Path kept = data.archives().resolve(recorded + ".zip");
        Path aside = root.resolve("aside.zip");
        Files.move(kept, aside);
        assertThat(ended(operator))
                .containsEntry("state", "failed")
                .satisfies(view -> assertThat(view.get("failure").toString()).contains(recorded, "backup"));
        // a byte more after the archive's end: whole, but not what was contributed
        Files.copy(aside, kept);
        Files.write(kept, new byte[] {0}, StandardOpenOption.APPEND);
        assertThat(ended(operator))
                .containsEntry("state", "failed")
                .satisfies(view -> assertThat(view.get("failure").toString()).contains(recorded, "backup"));
        Files.move(aside, kept, StandardCopyOption.REPLACE_EXISTING);
        assertThat(ended(operator)).containsEntry("state", "frozen");
    }

    private static io.restassured.response.Response asked(String token) {
        return as(token)
                .contentType("application/json")
                .body(Map.of("title", "Sample league"))
                .post(RELEASES);
    }

    private static int freeze(String operator) {
        Map<String, Object> release = ended(operator);
        assertThat(release).containsEntry("state", "frozen");
        return (int) release.get("number");
    }

    /** A new release once it is no longer being built. */
    private static Map<String, Object> ended(String operator) {
        int number = asked(operator).then().statusCode(202).extract().path("number");
        Map<String, Object> release = Map.of("state", "building");
        for (int tried = 0; release.get("state").equals("building") && tried < PATIENCE; tried++) {
            pause();
            release = given().get(RELEASES + "/" + number)
                    .then()
                    .statusCode(200)
                    .extract()
                    .path("");
        }
        return release;
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
