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
                .contains("for these rooms alone, their slopes taken as alike: 88 %")
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
        double trialSd = plan.at("/wanted/scatter/trialSd").asDouble();
        assertThat(trialSd).isPositive();
        String text = Ran.with(InventedFolders.after("plan", "--shot", "kick-3-rail", "--data"))
                .out();
        assertThat(text)
                .containsPattern("attempts [0-9.]{1,6}, sessions [0-9.]{1,6}, rooms' slopes [0-9.]{1,6} per 10 %RH");
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
                // 3 h times the logarithm of a step of 70 %RH, of which 1 may be left
                .contains("12.7 (!)")
                .contains("--settle-hours 13 would do");
        assertThat(ran.out().indexOf("danger: ")).isLessThan(ran.out().indexOf("note: "));
    }

    @Test
    void warnsOfAColdTableAndOfNobodyThere() {
        Ran ran = Ran.with(
                "plan",
                "--bed-c",
                "8",
                "--unattended",
                "--heater-watts",
                "1000",
                "--breaker-amps",
                "16",
                "--volts",
                "230");

        assertThat(ran.out())
                .contains("danger: The bed is at or below the air's dew point")
                .contains("danger: Never leave heaters or dehumidifiers running with nobody there");
    }

    @Test
    void carriesTheErrorOfTheTimeConstantIntoTheWait() throws Exception {
        Ran ran = Ran.with(
                "plan",
                "--climates",
                "30,50",
                "--visits",
                "2",
                "--time-constant-hours",
                "2",
                "--time-constant-error-hours",
                "0.5",
                "--json");

        JsonNode lag = AnalyzeCommandTest.parsed(ran.out()).at("/sessions/1/step/settling");
        // τ ln 20, and the same share of it as 0.5 is of 2
        assertThat(lag.path("hours").asDouble()).isCloseTo(2 * Math.log(20), within(1e-9));
        assertThat(lag.path("errorHours").asDouble()).isCloseTo(0.5 * Math.log(20), within(1e-9));
    }

    @Test
    void spacesANumberOfClimatesOverARange() throws Exception {
        Ran ran = Ran.with("plan", "--climates", "5", "--range", "30,70", "--json");

        List<Double> climates = new ArrayList<>();
        AnalyzeCommandTest.parsed(ran.out()).at("/plan/rhPct").forEach(rhPct -> climates.add(rhPct.asDouble()));
        assertThat(climates).containsExactly(30.0, 40.0, 50.0, 60.0, 70.0);
    }

    @Test
    void drawsAnOrderThatTheTellingSeedDrawsAgain() throws Exception {
        JsonNode drawn = AnalyzeCommandTest.parsed(
                Ran.with("plan", "--visits", "20", "--json").out());

        JsonNode again = AnalyzeCommandTest.parsed(Ran.with(
                        "plan",
                        "--visits",
                        "20",
                        "--json",
                        "--seed",
                        drawn.path("seed").asText())
                .out());

        assertThat(again).isEqualTo(drawn);
        assertThat(drawn.at("/sessions")).hasSize(60);
    }

    @Test
    void leavesNoSheetWhereThereCanBeNoFolder() {
        Path taken = directory.resolve("taken");
        Path sheet = directory.resolve("half.html");
        assertThat(Ran.with("plan", "--folder", taken.toString()).exitCode()).isEqualTo(ExitCodes.DONE);

        Ran ran = Ran.with("plan", "--sheet", sheet.toString(), "--folder", taken.toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(sheet).doesNotExist();
    }

    @Test
    void writesNoDatesThatNobodyStated() throws Exception {
        Path counted = directory.resolve("counted.html");
        Path dated = directory.resolve("dated.html");

        Ran.with("plan", "--sheet", counted.toString());
        Ran.with("plan", "--first-day", "2026-01-12T14:00:00+01:00", "--sheet", dated.toString());

        assertThat(Files.readString(counted)).contains("visit 3, day 9").doesNotContainPattern("20\\d\\d-");
        assertThat(Files.readString(dated)).contains("2026-01-12 18:00").contains("2026-01-20 18:00");
    }

    /** Columns of the kind, as kinds.json of the schema has them. */
    @ParameterizedTest
    @CsvSource({"break-15, balls_<wbr>made", "kick-3-rail, landing_<wbr>offset_<wbr>dia"})
    void hasRoomForWhatTheShotTells(String shot, String column) throws Exception {
        Path sheet = directory.resolve("plan.html");

        Ran ran = Ran.with("plan", "--shot", shot, "--sheet", sheet.toString());

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        assertThat(Files.readString(sheet)).contains("<th>" + column + "</th>");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--climates 3,50|--climates: climate 3.0 %RH is outside 5..95",
                "--visits -3|--visits -3 is outside 1..100",
                "--temperature 70|--temperature 70.0",
                "--range 70,30 --climates 4|not two humidities",
                "--range 30,70|no number of climates",
                "--trial-sd NaN|--trial-sd NaN is outside 0..1000",
                "--trial-sd 0 --session-sd 0|nothing scatters",
                "--time-constant-error-hours 1|error of nothing",
                "--time-constant-hours 1 --time-constant-error-hours 2|not from 0 to below 1.0",
                "--bed-c 90|--bed-c 90.0 is outside",
                "--volts 0 --breaker-amps 1 --heater-watts 1|--volts 0.0 is not above 0",
                "--climates 50|climates 1 is outside 2..20",
                "--attempts 0|attempts 0 is outside",
                "--response spin|cannot be planned for",
                "--change 0|is 0 or beyond",
                "--power 1.5|outside 0.1..0.999",
                "--room-number 2|--room-number 2 is outside 1..1",
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
