package org.tableweather.server.contribution;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.folder.BrokenFolders;
import org.tableweather.schema.folder.BrokenFolders.Broken;
import org.tableweather.server.TestData;
import org.tableweather.server.Tokens;

/** Every broken contribution gives its finding, and none reaches the database. */
@QuarkusTest
@QuarkusTestResource(TestData.class)
class BrokenArchivesTest {
    /** A fault of folders alone: an archive has no links. */
    private static final String LINK = "structure.link-outside";

    @Inject
    DataSource database;

    @TempDir
    Path root;

    private List<Long> rows() throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT (SELECT count(*) FROM room), (SELECT count(*) FROM"
                        + " pool_table), (SELECT count(*) FROM session), (SELECT count(*) FROM trial)")) {
            row.next();
            return List.of(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4));
        }
    }

    private Path archive(Broken broken) throws IOException {
        Path written = broken.writeTo(Files.createDirectories(root.resolve("of")));
        if (broken.isArchive()) {
            return written;
        }
        Path archive = root.resolve(broken.name() + ".zip");
        try (OutputStream out = Files.newOutputStream(archive);
                ZipOutputStream zip = new ZipOutputStream(out);
                Stream<Path> files = Files.list(written)) {
            for (Path file : files.sorted().toList()) {
                zip.putNextEntry(new ZipEntry(file.getFileName().toString()));
                Files.copy(file, zip);
                zip.closeEntry();
            }
        }
        return archive;
    }

    @Test
    void eachGivesItsFindingAndLeavesNoRow() throws IOException, SQLException {
        String token = Tokens.of("broken", "contributor", "contribute");
        List<Long> before = rows();
        int refused = 0;
        for (Broken broken : BrokenFolders.all()) {
            if (broken.check().equals(LINK)) {
                continue;
            }
            JsonPath answer = Tokens.as(token)
                    .contentType("application/zip")
                    .body(Files.readAllBytes(archive(broken)))
                    .post("/api/v1/contributions")
                    .then()
                    .statusCode(422)
                    .extract()
                    .jsonPath();
            Map<String, Integer> counts = answer.getMap("report.counts");
            assertThat(counts).as(broken.name()).containsKey(broken.check());
            refused++;
        }
        // the demand: twenty broken folders at least
        assertThat(refused).isGreaterThanOrEqualTo(20);
        assertThat(rows()).isEqualTo(before);
    }
}
