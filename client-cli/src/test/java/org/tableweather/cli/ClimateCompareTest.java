package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two invented logs that differ by a stated amount. */
class ClimateCompareTest {
    @TempDir
    private Path directory;

    private Path log(String name, double rhOffset, int minutesLate) throws IOException {
        StringBuilder text = new StringBuilder("time,temperature C,humidity %\n");
        LocalDateTime time = LocalDateTime.of(2026, 1, 12, 18, 0).plusMinutes(minutesLate);
        for (int i = 0; i < 60; i++) {
            text.append(time.plusMinutes(10L * i))
                    .append(",20.0,")
                    .append(40 + i / 10.0 + rhOffset)
                    .append('\n');
        }
        return Files.writeString(directory.resolve(name), text.toString());
    }

    @Test
    void findsTheOffsetOfTwoFiles() throws Exception {
        Ran ran = Ran.with(
                "climate",
                "compare",
                log("wall.csv", 0, 0).toString(),
                log("bar.csv", 6, 0).toString(),
                "--zone",
                "Z",
                "--json");

        assertThat(ran.exitCode()).as(ran.err()).isEqualTo(ExitCodes.DONE);
        JsonNode outcome = AnalyzeCommandTest.parsed(ran.out());
        assertThat(outcome.at("/comparison/pairs").asInt()).isEqualTo(60);
        assertThat(outcome.at("/comparison/rhPct/mean").asDouble()).isCloseTo(6, within(1e-9));
        assertThat(outcome.path("agreement").asText()).isEqualTo("uncalibrated");
    }

    @Test
    void takesTheSecondClocksErrorOff() throws Exception {
        Ran ran = Ran.with(
                "climate",
                "compare",
                log("wall.csv", 0, 0).toString(),
                log("bar.csv", 1, 90).toString(),
                "--zone",
                "Z",
                "--clock-offset",
                "90m");

        assertThat(ran.out()).contains("60 common times").contains("They agree better");
    }

    @Test
    void comparesTwoInstrumentsOfAFolder() throws Exception {
        Path folder = Files.createDirectory(directory.resolve("hall"));
        StringBuilder csv = new StringBuilder("instrument,time,temp_c,rh_pct\n");
        for (int i = 10; i < 40; i++) {
            csv.append("h1,2026-01-12T18:").append(i).append(":00Z,20,40\n");
            csv.append("h2,2026-01-12T18:").append(i).append(":00Z,20,57\n");
        }
        Files.writeString(folder.resolve("climate.csv"), csv.toString());

        Ran ran = Ran.with("climate", "compare", folder.toString(), "--instrument", "h1", "h2");
        Ran unknown = Ran.with("climate", "compare", folder.toString(), "--instrument", "h1", "h9");

        assertThat(ran.out()).contains("30 common times").contains("17.00").contains("one is at fault");
        assertThat(unknown.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(unknown.err()).contains("no readings of h9");
        assertThat(Ran.with("climate", "compare", folder.toString()).exitCode()).isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void saysWhenNothingIsCommon() throws Exception {
        Ran ran = Ran.with(
                "climate",
                "compare",
                log("wall.csv", 0, 0).toString(),
                log("bar.csv", 0, 9000).toString(),
                "--zone",
                "Z");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.err()).contains("fewer than two times in common");
    }

    @Test
    void smoothsOnlyWhenAskedAndSaysSo() throws Exception {
        Path log = directory.resolve("flicker.csv");
        StringBuilder text = new StringBuilder("time,temperature C,humidity %\n");
        for (int i = 0; i < 30; i++) {
            text.append("2026-01-12 18:")
                    .append(i + 10)
                    .append(",20.0,")
                    .append(i % 2 == 0 ? 40 : 43)
                    .append('\n');
        }
        Files.writeString(log, text.toString());

        Ran plain = Ran.with("climate", "import", log.toString(), "--zone", "Z");
        Ran smooth = Ran.with("climate", "import", log.toString(), "--zone", "Z", "--smooth", "2m");

        assertThat(plain.out()).contains("18:15:00Z,20,43,").doesNotContain("smoothed");
        // the mean of 40, 43, 40
        assertThat(smooth.out()).contains("18:15:00Z,20,41,").contains("18:10:00Z,20,40,");
        assertThat(smooth.err()).contains("smoothed: centred mean over 120 s");
        assertThat(Ran.with("climate", "import", log.toString(), "--zone", "Z", "--smooth", "0m")
                        .exitCode())
                .isEqualTo(ExitCodes.USAGE);
        assertThat(Ran.with("climate", "import", log.toString(), "--zone", "Z", "--gap-factor", "1")
                        .exitCode())
                .isEqualTo(ExitCodes.USAGE);
    }
}
