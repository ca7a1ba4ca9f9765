package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The logs here are written by hand in the ways of loggers; no outside figures are needed. */
class ClimateImportTest {
    private static final int READINGS = 1500;

    @TempDir
    private Path directory;

    private Path log;

    @BeforeEach
    void writeLog() throws IOException {
        StringBuilder text = new StringBuilder("\"Date\";\"Temp (°F)\";\"Humidity\"\n");
        LocalDateTime time = LocalDateTime.of(2026, 1, 12, 18, 0);
        for (int i = 0; i < READINGS; i++) {
            text.append(String.format(
                    "\"%s\";\"68,0\";\"45,5\"%n", time.plusMinutes(i).toString().replace('T', ' ')));
        }
        log = Files.writeString(directory.resolve("log.csv"), text.toString());
    }

    @Test
    void printsReadingsInTheFormatsColumnsAndUnits() {
        Ran ran = Ran.with("climate", "import", log.toString(), "--zone", "Europe/Oslo", "--instrument", "h2");

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        List<String> lines = ran.out().lines().toList();
        assertThat(lines).hasSize(1 + READINGS);
        assertThat(lines.get(0)).isEqualTo("instrument,time,temp_c,rh_pct,placement");
        // 68 °F are 20 °C; Oslo is one hour ahead of UTC in January
        assertThat(lines.get(1)).isEqualTo("h2,2026-01-12T17:00:00Z,20,45.5,room");
        assertThat(ran.err()).contains("guessed:").contains("1,500 readings");
    }

    @Test
    void addsEveryReadingOnceHoweverOftenItIsRun() throws Exception {
        Path folder = directory.resolve("hall");
        Ran.with("new", folder.toString(), "--sessions", "1");
        importInto(folder);
        String once = Files.readString(folder.resolve("climate.csv"));
        Ran again = importInto(folder);

        assertThat(once.lines()).hasSize(1 + READINGS);
        assertThat(once).as("example rows are taken out").doesNotContain("example");
        assertThat(again.err()).contains("added 0 readings").contains("1500 were there already");
        assertThat(folder.resolve("climate.csv")).hasContent(once);
    }

    @Test
    void takesTheClocksErrorOff() {
        Ran ran = Ran.with("climate", "import", log.toString(), "--zone", "Z", "--clock-offset", "5m");

        assertThat(ran.out()).contains("h1,2026-01-12T17:55:00Z,");
    }

    @Test
    void asksForTheZoneThatTheTimesLack() {
        Ran ran = Ran.with("climate", "import", log.toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.err()).contains("zone").contains("--zone");
        assertThat(ran.out()).isEmpty();
    }

    @Test
    void reportsGapsAsJson() throws Exception {
        List<String> lines = Files.readAllLines(log);
        lines.subList(100, 200).clear();
        Files.write(log, lines);
        Path folder = Files.createDirectory(directory.resolve("plain"));

        Ran ran = Ran.with("climate", "import", log.toString(), "--zone", "Z", "--into", folder.toString(), "--json");

        JsonNode report = JsonText.tree(ran.out().getBytes(StandardCharsets.UTF_8));
        assertThat(report.path("gapCount").asInt()).isEqualTo(1);
        assertThat(report.path("gaps").path(0).path("from").asText()).isEqualTo("2026-01-12T19:38:00Z");
        assertThat(report.path("gaps").path(0).path("to").asText()).isEqualTo("2026-01-12T21:19:00Z");
        assertThat(report.path("medianStepSeconds").asInt()).isEqualTo(60);
    }

    @Test
    void leavesAFileAloneThatItDoesNotUnderstand() throws Exception {
        Path folder = Files.createDirectory(directory.resolve("other"));
        String theirs = "instrument;time;temp_c;rh_pct\nh1;2026-01-12T18:00:00Z;20,0;45,5\n";
        Files.writeString(folder.resolve("climate.csv"), theirs);

        Ran ran = importInto(folder);

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(folder.resolve("climate.csv")).hasContent(theirs);
    }

    @Test
    void refusesAClockOffsetThatIsNoTime() {
        Ran ran = Ran.with("climate", "import", log.toString(), "--clock-offset", "soon");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("'soon' is no time: write 90s, -5m or 1h");
    }

    private Ran importInto(Path folder) {
        Ran ran = Ran.with("climate", "import", log.toString(), "--zone", "Z", "--into", folder.toString());
        return ran;
    }
}
