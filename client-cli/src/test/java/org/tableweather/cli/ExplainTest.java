package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.host.AnalyzerCatalogue;

class ExplainTest {

    private static final Path PAGE = Path.of("../analyzers/standard/ANALYZERS.md");

    @Test
    void theCommittedPageIsTheGeneratedOne() throws IOException {
        Ran ran = Ran.with("analyze", "--explain");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.DONE);
        assertThat(Files.readString(PAGE))
                .as("an analyzer's words changed: write the page anew with"
                        + " tableweather analyze --explain > analyzers/standard/ANALYZERS.md")
                .isEqualTo(ran.out());
    }

    @Test
    void explainsOneWithItsSourcesSpelledOut() {
        Ran ran = Ran.with("analyze", "break-spread", "--explain");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out())
                .startsWith("## break-spread\n")
                .contains("**Does the break spread the balls more, or less, when it is damp?**")
                .contains("- `Donnelly1978` (paper): Donnelly, K. P. (1978).")
                .contains("| `shape` |")
                .doesNotContain("table-speed");
    }

    @Test
    void explainsEachWithoutAnEmptyPart() throws IOException {
        AnalyzerCatalogue.discover().all().forEach(analyzer -> {
            String page = Ran.with("analyze", analyzer.info().id(), "--explain").out();
            assertThat(page).contains("**Method.** ", "**Assumptions:**", "**Declines", "**Sources:**");
            assertThat(page.lines()).noneMatch(line -> line.equals("- "));
        });
    }

    @Test
    void printsTheSameAsJson() throws IOException {
        Ran ran = Ran.with("analyze", "table-speed", "--explain", "--json");

        JsonNode one = new ObjectMapper().readTree(ran.out()).path("analyzers").path(0);
        assertThat(one.path("analyzer").path("id").asText()).isEqualTo("table-speed");
        assertThat(one.path("sources").path(0).path("key").asText()).isEqualTo("Mathavan2009");
        assertThat(one.path("sources").path(0).path("citation").asText()).contains("High-Speed Imaging");
    }

    @Test
    void namesTheAnalyzersWhenThereIsNoSuchOne() {
        Ran ran = Ran.with("analyze", "table-sped", "--explain");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("there is no analyzer table-sped", "table-speed");
    }
}
