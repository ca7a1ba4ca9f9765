package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.check.Checks;
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
}
