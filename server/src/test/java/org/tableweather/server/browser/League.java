package org.tableweather.server.browser;

import static io.restassured.RestAssured.given;
import static org.tableweather.server.Tokens.as;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.schema.folder.ExampleFolder;
import org.tableweather.server.Examples;
import org.tableweather.server.SampleLeague;
import org.tableweather.server.Tokens;

/** The sample league, contributed, and what becomes of contributions. */
final class League {
    private static final int CREATED = 201;
    private static final int REFUSED = 422;
    private static final int PATIENCE = 300;

    private League() {}

    static void contribute() throws IOException {
        Path root = Files.createTempDirectory("league");
        List<Path> folders = SampleLeague.writeTo(root);
        for (int room = 0; room < folders.size(); room++) {
            Path archive = root.resolve(room + ".zip");
            ContributionWriter.pack(folders.get(room), archive);
            as(Tokens.of(SampleLeague.contributor(room), "contributor", "contribute"))
                    .contentType("application/zip")
                    .body(Files.readAllBytes(archive))
                    .post("/api/v1/contributions")
                    .then()
                    .statusCode(CREATED);
        }
        Examples.delete(root);
    }

    /** Hands over a folder; gives the contribution's number. */
    static int handOver(ExampleFolder content, String account, int status, String number) throws IOException {
        Path root = Files.createTempDirectory(account);
        Path archive = root.resolve("folder.zip");
        ContributionWriter.pack(content.writeTo(root.resolve("folder")), archive);
        int id = as(Tokens.of(account, "contributor", "contribute"))
                .contentType("application/zip")
                .body(Files.readAllBytes(archive))
                .post("/api/v1/contributions")
                .then()
                .statusCode(status)
                .extract()
                .path(number);
        Examples.delete(root);
        return id;
    }

    /** Hands over two sound sessions with a log; the path of one attempt of the first is marked, and is not what was typed. */
    static int accepted() throws IOException {
        ExampleFolder folder = ExampleFolder.sound().put("contacts.csv", """
                session,trial,seq,point,rail,x_dia,y_dia,t_s
                s1,2,1,start,,1.27,2,0
                s1,2,2,rail,near,3.18,0.09,0.6
                s1,2,3,rail,far,6.93,3.91,2.0
                """);
        return handOver(folder, "cellar", CREATED, "id");
    }

    /** Hands over a log whose first reading has a humidity that cannot be. */
    static int refused() throws IOException {
        ExampleFolder folder = ExampleFolder.sound()
                .replace(
                        "climate.csv",
                        "h1,2026-01-12T18:00:00+01:00,20.0,38.0",
                        "h1,2026-01-12T18:00:00+01:00,20.0,140");
        return handOver(folder, "careless", REFUSED, "contribution");
    }

    /** Takes a contribution back. */
    static void withdraw(int contribution, String reason) {
        as(Tokens.of("curator", "curator", "curate"))
                .queryParam("reason", reason)
                .post("/api/v1/contributions/" + contribution + "/withdraw")
                .then()
                .statusCode(200);
    }

    /** Freezes what is accepted, and waits for it. */
    static void freeze(String title) {
        String address = as(Tokens.operator())
                .contentType("application/json")
                .body(Map.of("title", title))
                .post("/api/v1/releases")
                .then()
                .statusCode(202)
                .extract()
                .header("Location");
        for (int i = 0; i < PATIENCE; i++) {
            if (given().get(address).path("state").equals("frozen")) {
                return;
            }
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError(given().get(address).asString());
    }
}
