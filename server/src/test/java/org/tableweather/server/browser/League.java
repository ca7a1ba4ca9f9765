package org.tableweather.server.browser;

import static org.tableweather.server.Tokens.as;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.tableweather.schema.folder.ContributionWriter;
import org.tableweather.server.Examples;
import org.tableweather.server.SampleLeague;
import org.tableweather.server.Tokens;

/** The sample league, contributed. */
final class League {
    private static final int CREATED = 201;

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
}
