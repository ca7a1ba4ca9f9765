package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanCommandTest {
    @TempDir
    private Path directory;

    @Test
    void saysHowSureAPlanIsAndWhatThatRestsOn() {
        Ran ran = Ran.with("plan");

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out())
                .contains("9 sessions in each room, 180 attempts in all")
                .contains("for these rooms alone: 88 %")
                .contains("One room says nothing of other rooms")
                .contains("ASSUMED, measured nowhere")
                .contains("Local codes and licensed practice come first");
    }

    /** R 4.2.2 in the script power.R: 5 rooms, slope 0.3 per 10 %RH, that is 1.2 from 30 to 70 %RH. */
    @Test
    void computesTheChanceThatRComputes() throws Exception {
        Ran ran = Ran.with(
                "plan",
                "--climates",
                "30,40,50,60,70",
                "--visits",
                "1",
                "--rooms",
                "5",
                "--change",
                "1.2",
                "--trial-sd",
                "2",
                "--session-sd",
                "0.5",
                "--room-slope-sd",
                "0.25",
                "--json");

        JsonNode plan = AnalyzeCommandTest.parsed(ran.out());
        assertThat(plan.at("/chances/0/claim").asText()).isEqualTo("ANY_ROOM");
        assertThat(plan.at("/chances/0/chance").asDouble()).isCloseTo(0.348431349810599, within(1e-9));
        assertThat(plan.at("/wanted/scatterFrom").asText()).isEqualTo("stated");
    }

    @Test
    void takesTheScatterFromAPool() throws Exception {
        Ran ran = Ran.with(InventedFolders.after("plan", "--shot", "kick-3-rail", "--json", "--data"));

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        JsonNode plan = AnalyzeCommandTest.parsed(ran.out());
        assertThat(plan.at("/wanted/scatterFrom").asText()).isEqualTo("estimated from the pool");
        assertThat(plan.at("/wanted/scatter/trialSd").asDouble()).isPositive();
    }

    @Test
    void makesAFolderThatPassesTheChecksInThePlannedOrder() throws Exception {
        Path folder = directory.resolve("spring");

        Ran ran = Ran.with(
                "plan",
                "--shot",
                "kick-3-rail",
                "--shot",
                "rebound-45-ramp",
                "--visits",
                "2",
                "--folder",
                folder.toString(),
                "--json");

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        Ran checked = Ran.with("check", folder.toString());
        assertThat(checked.out()).contains("accepted; 240 trials in 6 sessions; 0 to mend, 0 warnings");
        List<String> planned = new ArrayList<>();
        for (JsonNode session : AnalyzeCommandTest.parsed(ran.out()).path("sessions")) {
            session.at("/session/shots").forEach(shot -> planned.add(shot.asText()));
        }
        List<String> rows = Files.readAllLines(folder.resolve("trials.csv"));
        int shot = List.of(rows.get(0).split(",")).indexOf("shot");
        assertThat(rows.stream().skip(1).map(row -> row.split(",")[shot])).containsExactlyElementsOf(planned);
        assertThat(folder.resolve("README.sheet.html")).exists();
        assertThat(Ran.with("plan", "--folder", folder.toString()).exitCode()).isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void printsASheetWithALineForEveryAttempt() throws Exception {
        Path sheet = directory.resolve("plan.html");

        Ran ran = Ran.with("plan", "--sheet", sheet.toString(), "--room", "Cellar <club>");

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        String html = Files.readString(sheet);
        assertThat(html)
                .contains("Cellar &lt;club&gt;")
                .doesNotContain("<club>")
                .doesNotContainPattern("\\{[a-z]+\\}");
        assertThat(html.split("<tr><td>", -1)).hasSize(1 + 180);
        assertThat(Ran.with("plan", "--sheet", sheet.toString()).exitCode()).isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void warnsOfClimatesThatCanHurt() {
        Ran ran = Ran.with(
                "plan",
                "--climates",
                "20,90",
                "--temperature",
                "40",
                "--heater-watts",
                "3000",
                "--breaker-amps",
                "15",
                "--volts",
                "120",
                "--time-constant-hours",
                "3");

        assertThat(ran.out())
                .contains("danger: It feels like 59 °C")
                .contains("more than the breaker carries")
                // 1 - exp(-4/3)
                .contains("74 %")
                .contains("9.0 h");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--climates 3,50|outside 5..95",
                "--climates 50|climates 1 is outside 2..20",
                "--attempts 0|attempts 0 is outside",
                "--response spin|cannot be planned for",
                "--change 0|is 0 or beyond",
                "--power 1.5|outside 0.1..0.999",
                "--room-number 2|room 2 is outside 1..1",
                "--settle-hours -1|outside 0..336",
                "--time-constant-hours 0|not above 0",
                "--first-day monday|no time with a zone",
                "--breaker-amps 15|judged by its load",
                "--visits 100 --attempts 500 --sheet never.html|pages",
                "--shot none-such|none-such"
            })
    void refusesWhatCannotBeMeant(String options, String words) {
        List<String> arguments = new ArrayList<>(List.of("plan"));
        arguments.addAll(List.of(options.split(" ")));

        Ran ran = Ran.with(arguments.toArray(String[]::new));

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains(words);
    }
}
