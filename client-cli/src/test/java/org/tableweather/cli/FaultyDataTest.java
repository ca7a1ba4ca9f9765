package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.schema.folder.BrokenFolders;

/** Every faulty contribution that the schema publishes is refused with exit code 3, and by the right check. */
class FaultyDataTest {
    private static final String NOBODY = "http://127.0.0.1:1";

    @TempDir
    private Path directory;

    static List<BrokenFolders.Broken> all() {
        return BrokenFolders.all();
    }

    @ParameterizedTest
    @MethodSource("all")
    void isRefusedByTheRightCheck(BrokenFolders.Broken broken) throws Exception {
        Path path = broken.writeTo(directory);

        Ran ran = Ran.with("check", path.toString(), "--json");

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.REFUSED);
        assertThat(checksThatRefuse(ran.out())).contains(broken.check());
        assertThat(ran.err()).doesNotContain("\tat ");
    }

    @ParameterizedTest
    @MethodSource("all")
    void isNeitherAnalysedNorSent(BrokenFolders.Broken broken) throws Exception {
        Path path = broken.writeTo(directory);

        Ran analysed = Ran.with("analyze", "rebound-humidity", "--data", path.toString());
        Ran sent = Ran.with("contribute", path.toString(), "--server", NOBODY);

        assertThat(analysed.exitCode()).as(analysed.err()).isEqualTo(ExitCodes.REFUSED);
        assertThat(analysed.out()).isEmpty();
        assertThat(analysed.err()).contains(broken.check());
        // 4 would mean that it had asked the server
        assertThat(sent.exitCode()).as(sent.err()).isEqualTo(ExitCodes.REFUSED);
        assertThat(sent.err()).contains("nothing was sent");
    }

    private static List<String> checksThatRefuse(String json) throws IOException {
        JsonNode report = JsonText.tree(json.getBytes(StandardCharsets.UTF_8))
                .path("reports")
                .path(0);
        return report.findParents("severity").stream()
                .filter(finding -> finding.path("severity").asText().equals("refuse"))
                .map(finding -> finding.path("check").asText())
                .toList();
    }
}
