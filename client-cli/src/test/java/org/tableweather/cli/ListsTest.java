package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.check.Checks;
import org.tableweather.schema.reference.References;
import org.tableweather.schema.shots.ShotCatalogue;

class ListsTest {

    @Test
    void listsTheShotsUnderBothNames() throws Exception {
        String json = Ran.with("schema", "shots", "--json").out();

        JsonNode shots = AnalyzeCommandTest.parsed(json).path("shots");
        assertThat(shots.findValuesAsText("id"))
                .hasSize(ShotCatalogue.all().size())
                .contains("kick-3-rail");
        assertThat(shots.path(0).path("kind").asText()).isEqualTo("rebound");
        assertThat(Ran.with("shots", "--json").out()).isEqualTo(json);
    }

    @Test
    void tellsHowToShootOne() {
        assertThat(Ran.with("shots", "kick-3-rail").out())
                .contains("ball starts at: x 2.5")
                .contains("keep constant:")
                .contains("log: In contacts.csv mark the ball");
    }

    @Test
    void listsTheChecksWithSeverityAndReference() throws Exception {
        JsonNode checks =
                AnalyzeCommandTest.parsed(Ran.with("checks", "--json").out()).path("checks");

        assertThat(checks).hasSize(Checks.all().size());
        checks.forEach(check -> {
            assertThat(check.path("id").asText()).matches("[a-z]+\\.[a-z0-9-]+");
            assertThat(List.of("refuse", "warn", "note"))
                    .contains(check.path("severity").asText());
            assertThat(check.path("reference").asText()).isNotEmpty();
        });
    }

    @Test
    void printsEveryPartOfTheFormat() throws Exception {
        JsonNode parts =
                AnalyzeCommandTest.parsed(Ran.with("schema", "--json").out()).path("schema");

        assertThat(parts).hasSizeGreaterThan(10);
        parts.forEach(part -> {
            Ran printed = Ran.with("schema", part.path("name").asText());
            assertThat(printed.exitCode()).as(part.toString()).isEqualTo(ExitCodes.DONE);
            assertThat(printed.out()).isNotBlank();
        });
        assertThat(Ran.with("schema").out()).contains("trials.csvw.json");
        assertThat(AnalyzeCommandTest.parsed(Ran.with("schema", "trials").out())
                        .at("/tableSchema/columns/0/name")
                        .asText())
                .isEqualTo("session");
        assertThat(Ran.with("schema", "dictionary").out()).contains("`final_rebound_angle_u_deg`");
        Ran unknown = Ran.with("schema", "weather");
        assertThat(unknown.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(unknown.err()).contains("choose one of: contribution, session");
    }

    @Test
    void exportsTheSources() throws Exception {
        assertThat(Ran.with("schema", "references", "--bibtex").out()).contains("@article{AlduchovEskridge1996,");
        JsonNode items = AnalyzeCommandTest.parsed(
                Ran.with("schema", "references", "--csl-json").out());
        assertThat(items).hasSize(References.all().size());
        assertThat(Ran.with("schema", "references", "Greenspan1977").out())
                .startsWith("Greenspan1977 [")
                .contains("seen: ");
        assertThat(AnalyzeCommandTest.parsed(
                                Ran.with("schema", "references", "--json").out())
                        .path("references"))
                .hasSize(References.all().size());
        assertThat(Ran.with("schema", "references", "Nobody1900").exitCode()).isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void drawsAShotOnItsTable(@TempDir Path directory) throws Exception {
        Path file = directory.resolve("shot.svg");

        assertThat(Ran.with("shots", "kick-3-rail", "--svg", file.toString()).exitCode())
                .isEqualTo(ExitCodes.DONE);

        assertThat(Files.readString(file)).startsWith("<svg ").contains("<title");
        assertThat(Ran.with("shots", "kick-3-rail", "--svg", "-").out()).isEqualTo(Files.readString(file));
        assertThat(Ran.with("shots", "--svg", "-").exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(Ran.with("shots", "kick-3-rail", "--svg", "-", "--table", "door")
                        .err())
                .contains("pool-9ft");
    }
}
