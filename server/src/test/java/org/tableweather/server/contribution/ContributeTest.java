package org.tableweather.server.contribution;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.tableweather.server.Tokens.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.server.Examples;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;
import org.tableweather.server.datafolder.DataFolder;

@QuarkusTest
@QuarkusTestResource(TestData.class)
class ContributeTest {
    @Inject
    DataSource database;

    @Inject
    DataFolder folder;

    private static ValidatableResponse contribute(String token, byte[] archive) {
        return as(token)
                .contentType("application/zip")
                .body(archive)
                .post("/api/v1/contributions")
                .then();
    }

    private static String contributor(String name) {
        return Tokens.of(name, "contributor", "contribute");
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String hex(byte[] bytes) {
        return HexFormat.of().formatHex(sha256(bytes));
    }

    private long count(String sql) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(sql)) {
            row.next();
            return row.getLong(1);
        }
    }

    @Test
    void aSoundArchiveIsAcceptedAndPublished() {
        byte[] archive = Examples.archive("sound");
        String self = contribute(contributor("sound"), archive)
                .statusCode(201)
                .body("state", equalTo("accepted"))
                .body("sha256", equalTo(hex(archive)))
                .body("trials", equalTo(Examples.TRIALS))
                .body("sessions", equalTo(2))
                .body("rooms", equalTo(1))
                .body("invented", equalTo(true))
                .body("report.refused", equalTo(false))
                .extract()
                .header("Location");
        given().get(self).then().statusCode(200).body("state", equalTo("accepted"));
        given().get("/api/v1/trials?room=sound/cellar&limit=100")
                .then()
                .statusCode(200)
                .body("trials", hasSize(Examples.TRIALS));
    }

    @Test
    void theSameArchiveAgainIsTheSameContribution() throws SQLException {
        String token = contributor("twice");
        byte[] archive = Examples.archive("twice");
        int first = contribute(token, archive).statusCode(201).extract().path("id");
        contribute(token, archive).statusCode(200).body("id", equalTo(first)).body("report", notNullValue());
        assertThat(count("SELECT count(*) FROM session WHERE contribution_id = " + first))
                .isEqualTo(2);
        given().get("/api/v1/contributions?sha256=" + hex(archive)).then().body("contributions", hasSize(1));
    }

    @Test
    void sendingTheSameArchiveAtOnceEndsInOneCopy() throws SQLException {
        String token = contributor("at-once");
        byte[] archive = Examples.archive("at-once");
        List<CompletableFuture<Integer>> posts = Stream.generate(() -> CompletableFuture.supplyAsync(
                        () -> contribute(token, archive).extract().statusCode()))
                .limit(4)
                .toList();
        List<Integer> statuses =
                posts.stream().map(CompletableFuture::join).sorted().toList();
        assertThat(statuses).containsExactly(200, 200, 200, 201);
        assertThat(count("SELECT count(*) FROM trial t JOIN session s ON s.id = t.session_id JOIN room r"
                        + " ON r.id = s.room_id WHERE r.key = 'at-once/cellar'"))
                .isEqualTo(Examples.TRIALS);
    }

    @Test
    void whatTheChecksRefuseLeavesAReportAndNoRows() throws SQLException {
        String token = contributor("refused");
        byte[] archive =
                Examples.pack(Examples.folder("refused").replace("trials.csv", "rebound-45-ramp", "rebound-46-ramp"));
        long before = count("SELECT count(*) FROM trial");
        int id = contribute(token, archive)
                .statusCode(422)
                .contentType(startsWith("application/problem+json"))
                .body("code", equalTo("contribution-refused"))
                .body("report.refused", equalTo(true))
                .body("report.findings[0].file", equalTo("trials.csv"))
                .extract()
                .path("contribution");
        given().get("/api/v1/contributions/" + id).then().body("state", equalTo("refused"));
        given().get("/api/v1/contributions/" + id + "/report")
                .then()
                .statusCode(200)
                .body("refused", equalTo(true));
        given().get("/api/v1/contributions/" + id + "/archive").then().statusCode(404);
        assertThat(count("SELECT count(*) FROM session WHERE contribution_id = " + id))
                .isZero();
        assertThat(count("SELECT count(*) FROM room WHERE key = 'refused/cellar'"))
                .isZero();
        assertThat(count("SELECT count(*) FROM trial")).isEqualTo(before);
        assertThat(Files.exists(folder.archives().resolve(hex(archive) + ".zip")))
                .isFalse();
    }

    @Test
    void aRefusedArchiveIsJudgedAnewWhenItIsSentAgain() {
        byte[] archive = Examples.archive("anew");
        String owner = contributor("anew-owner");
        int holder = contribute(
                        owner, Examples.pack(Examples.folder("anew").replace("contribution.json", "Winter", "Autumn")))
                .statusCode(201)
                .extract()
                .path("id");
        int refused = contribute(owner, archive)
                .statusCode(422)
                .body("report.counts.'statistics.duplicate-session'", equalTo(2))
                .body("report.findings.check", hasItem("statistics.duplicate-session"))
                .body("report.findings[0].message", containsString("contribution " + holder))
                .extract()
                .path("contribution");
        as(owner).post("/api/v1/contributions/" + holder + "/withdraw").then().statusCode(200);
        contribute(owner, archive).statusCode(201).body("id", equalTo(refused));
    }

    @Test
    void aRoomBelongsToTheAccountThatFirstContributedFromIt() {
        contribute(contributor("room-first"), Examples.archive("shared-name")).statusCode(201);
        ExampleFolder other = Examples.folder("shared-name").replace("contribution.json", "Winter", "Stolen");
        contribute(contributor("room-second"), Examples.pack(other))
                .statusCode(422)
                .body("report.findings[0].check", equalTo("catalogue.room-of-another-account"))
                .body("report.findings[0].value", equalTo("shared-name/cellar"));
    }

    @Test
    void theStatedDigestIsVerified() {
        String token = contributor("digest");
        byte[] archive = Examples.archive("digest");
        String right = "sha-256=:" + Base64.getEncoder().encodeToString(sha256(archive)) + ":";
        String wrong = "sha-256=:" + Base64.getEncoder().encodeToString(sha256(new byte[] {1})) + ":";
        as(token)
                .contentType("application/zip")
                .header("Content-Digest", wrong)
                .body(archive)
                .post("/api/v1/contributions")
                .then()
                .statusCode(400)
                .body("code", equalTo("digest-mismatch"));
        as(token)
                .contentType("application/zip")
                .header("Content-Digest", "sha-256=oops")
                .body(archive)
                .post("/api/v1/contributions")
                .then()
                .statusCode(400)
                .body("code", equalTo("bad-request"));
        as(token)
                .contentType("application/zip")
                .header("Content-Digest", right)
                .body(archive)
                .post("/api/v1/contributions")
                .then()
                .statusCode(201);
    }

    @Test
    void theArchiveComesBackByteForByte() {
        byte[] archive = Examples.archive("bytes");
        int id = contribute(contributor("bytes"), archive)
                .statusCode(201)
                .extract()
                .path("id");
        String address = "/api/v1/contributions/" + id + "/archive";
        assertThat(given().get(address)
                        .then()
                        .statusCode(200)
                        .contentType("application/zip")
                        .extract()
                        .asByteArray())
                .isEqualTo(archive);
        given().header("If-None-Match", "\"" + hex(archive) + "\"")
                .get(address)
                .then()
                .statusCode(304);
        byte[] rest = given().header("Range", "bytes=100-")
                .get(address)
                .then()
                .statusCode(206)
                .header("Content-Range", "bytes 100-" + (archive.length - 1) + "/" + archive.length)
                .extract()
                .asByteArray();
        assertThat(rest).isEqualTo(Arrays.copyOfRange(archive, 100, archive.length));
    }

    @Test
    void anArchiveWithAnExactPositionIsForItsContributorAndCurators() {
        String owner = contributor("exact");
        byte[] archive = Examples.pack(Examples.folder("exact").replace("contribution.json", "59.9", "59.91273"));
        int id = contribute(owner, archive).statusCode(201).extract().path("id");
        String address = "/api/v1/contributions/" + id + "/archive";
        given().get(address).then().statusCode(403).body("code", equalTo("not-yours"));
        as(owner).get(address).then().statusCode(200);
        as(Tokens.of("exact-curator", "curator", "curate")).get(address).then().statusCode(200);
        given().get("/api/v1/rooms/exact/cellar").then().statusCode(200).body("latitude", equalTo(59.9f));
        int session = given().get("/api/v1/sessions?room=exact/cellar")
                .then()
                .extract()
                .path("sessions[0].id");
        given().get("/api/v1/sessions/" + session).then().body("entry.room.latitude", equalTo(59.9f));
    }

    @Test
    void aWithdrawnContributionIsNoLongerPublished() {
        String owner = contributor("withdraw");
        byte[] archive = Examples.archive("withdraw");
        int id = contribute(owner, archive).statusCode(201).extract().path("id");
        String withdraw = "/api/v1/contributions/" + id + "/withdraw";
        given().post(withdraw).then().statusCode(401);
        as(contributor("withdraw-other")).post(withdraw).then().statusCode(403).body("code", equalTo("not-yours"));
        as(owner)
                .post(withdraw)
                .then()
                .statusCode(200)
                .body("state", equalTo("withdrawn"))
                .body("withdrawnAt", notNullValue());
        as(owner).post(withdraw).then().statusCode(409).body("code", equalTo("wrong-state"));
        given().get("/api/v1/trials?room=withdraw/cellar").then().body("trials", hasSize(0));
        given().get("/api/v1/rooms/withdraw/cellar").then().statusCode(404);
        contribute(owner, archive).statusCode(409);
    }

    @Test
    void anArchiveInPiecesGoesOnWhereItStopped() throws IOException {
        String token = contributor("pieces");
        byte[] archive = Examples.archive("pieces");
        String address = "/api/v1/uploads/" + hex(archive);
        as(token).head(address).then().statusCode(204).header("Upload-Offset", "0");
        piece(token, address, 0, Arrays.copyOf(archive, 500)).statusCode(204).header("Upload-Offset", "500");
        piece(token, address, 400, Arrays.copyOf(archive, 10))
                .statusCode(409)
                .header("Upload-Offset", "500")
                .body("code", equalTo("upload-offset"));
        as(token)
                .contentType("application/json")
                .body(Map.of("upload", hex(archive)))
                .post("/api/v1/contributions")
                .then()
                .statusCode(400)
                .body("code", equalTo("digest-mismatch"));
        as(token).head(address).then().header("Upload-Offset", "500");
        piece(token, address, 500, Arrays.copyOfRange(archive, 500, archive.length))
                .statusCode(204)
                .header("Upload-Offset", Integer.toString(archive.length));
        as(token)
                .contentType("application/json")
                .body(Map.of("upload", hex(archive)))
                .post("/api/v1/contributions")
                .then()
                .statusCode(201)
                .body("trials", equalTo(Examples.TRIALS));
        as(token).head(address).then().header("Upload-Offset", "0");
        try (Stream<Path> left = Files.list(folder.incoming())) {
            assertThat(left.filter(file -> file.toString().contains(hex(archive))))
                    .isEmpty();
        }
    }

    @Test
    void aPieceCanBeForgotten() {
        String token = contributor("forget");
        String address = "/api/v1/uploads/" + "0".repeat(64);
        piece(token, address, 0, new byte[10]).statusCode(204);
        as(contributor("forget-other")).head(address).then().header("Upload-Offset", "0");
        as(token).delete(address).then().statusCode(204);
        as(token).head(address).then().header("Upload-Offset", "0");
    }

    private static ValidatableResponse piece(String token, String address, long offset, byte[] bytes) {
        return as(token)
                .contentType("application/partial-upload")
                .header("Upload-Offset", offset)
                .body(bytes)
                .patch(address)
                .then();
    }

    @Test
    void aTextThatTheDatabaseCannotHoldIsAFinding() {
        byte[] archive = Examples.pack(Examples.folder("nul").replace("contribution.json", "Winter", "Win\\u0000ter"));
        contribute(contributor("nul"), archive).statusCode(422).body("report.refused", equalTo(true));
        byte[] room =
                Examples.pack(Examples.folder("nul").replace("contribution.json", "Cellar of nul", "Cellar\\u0000"));
        contribute(contributor("nul-room"), room).statusCode(422).body("report.refused", equalTo(true));
    }

    @Test
    void contributionsAreWalkedNewestFirst() {
        String token = contributor("walked");
        int first = contribute(token, Examples.archive("walked-1"))
                .statusCode(201)
                .extract()
                .path("id");
        int second = contribute(token, Examples.archive("walked-2"))
                .statusCode(201)
                .extract()
                .path("id");
        List<Integer> ids = given().get("/api/v1/contributions?state=accepted&limit=1000")
                .then()
                .statusCode(200)
                .extract()
                .path("contributions.id");
        assertThat(ids).containsSubsequence(second, first).isSortedAccordingTo((a, b) -> b - a);
        String next =
                given().get("/api/v1/contributions?limit=1").then().extract().path("next");
        given().get("/api/v1/contributions?limit=1&after=" + next)
                .then()
                .statusCode(200)
                .body("contributions", hasSize(1));
        given().get("/api/v1/contributions?state=lost")
                .then()
                .statusCode(400)
                .body("detail", containsString("accepted"));
    }
}
