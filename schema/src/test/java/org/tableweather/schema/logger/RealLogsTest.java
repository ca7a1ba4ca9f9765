package org.tableweather.schema.logger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.ClimateReading;

/**
 * Reads two published hygrometer logs as their loggers wrote them. The logs are not part of this repository, since
 * neither states a licence in its own repository: Candanedo and Feldheim 2016 (office, file datatest.txt of
 * LuisM78/Occupancy-detection-data), Candanedo, Feldheim and Deramaix 2017 (house, columns of testing.csv of
 * LuisM78/Appliances-energy-prediction-data). What is expected is taken from the lines of the logs themselves, split by
 * hand here.
 */
class RealLogsTest {
    private static final ZoneId BELGIUM = ZoneId.of("Europe/Brussels");
    private static final ZoneOffset STANDARD_TIME = ZoneOffset.ofHours(1);

    private static Path log(String name) {
        String set = System.getProperty("tableweather.climateLogs");
        Path folder = set != null ? Path.of(set) : Path.of("../../shared/reference/climate-logs");
        Path log = folder.resolve(name);
        assumeTrue(
                Files.isReadable(log),
                "the log " + name + " is not in " + folder.toAbsolutePath().normalize()
                        + "; -Dtableweather.climateLogs=FOLDER names another place");
        return log;
    }

    private static String[] cells(String line) {
        return Arrays.stream(line.split(","))
                .map(cell -> cell.replace("\"", "").strip())
                .toArray(String[]::new);
    }

    private static LoggerImport.Result read(Path log, LogOptions options) throws IOException, LogNotUnderstood {
        try (InputStream in = Files.newInputStream(log)) {
            return LoggerImport.read(in, options);
        }
    }

    private static List<ClimateReading> expected(List<String> lines, String instrument, int time, int temp, int rh) {
        return lines.stream()
                .skip(1)
                .map(RealLogsTest::cells)
                .map(cells -> new ClimateReading(
                        instrument,
                        LocalDateTime.parse(cells[time].replace(' ', 'T')).toInstant(STANDARD_TIME),
                        Double.parseDouble(cells[temp]),
                        Double.parseDouble(cells[rh]),
                        Double.NaN,
                        ""))
                .toList();
    }

    @Test
    void readsTheOfficeLogWhoseHeaderIsOneColumnShort() throws IOException, LogNotUnderstood {
        Path log = log("office-minute-log.csv");
        List<String> lines = Files.readAllLines(log);

        LoggerImport.Result result = read(log, LogOptions.of("office").withZone(BELGIUM));

        assertThat(result.report().rows()).isEqualTo(lines.size() - 1);
        assertThat(result.report().unreadableCount()).isZero();
        assertThat(result.readings())
                .hasSize(lines.size() - 1 - (int) result.report().repeatedCount());
        assertThat(result.report().guesses()).anyMatch(guess -> guess.contains("one column fewer"));
        assertThat(result.report().medianStep()).isEqualTo(Duration.ofMinutes(1));
        // February: one hour ahead of UTC
        assertThat(result.readings()).isEqualTo(expected(lines, "office", 1, 2, 3));
    }

    @Test
    void readsEachRoomOfTheHouseLog() throws IOException, LogNotUnderstood {
        Path log = log("house-nine-rooms.csv");
        List<String> lines = Files.readAllLines(log);
        List<String> names = List.of(cells(lines.get(0)));

        for (String room : List.of("1", "2", "3", "4", "5", "7", "8", "9")) {
            LogOptions options =
                    LogOptions.of("room" + room).withZone(STANDARD_TIME).withTempColumn("T" + room);
            LoggerImport.Result result = read(log, options);

            assertThat(result.report().guesses()).anyMatch(guess -> guess.contains("from column RH_" + room));
            assertThat(result.report().unreadableCount()).isZero();
            assertThat(result.readings()).hasSize(lines.size() - 1);
            assertThat(result.readings())
                    .isEqualTo(
                            expected(lines, "room" + room, 0, names.indexOf("T" + room), names.indexOf("RH_" + room)));
        }
    }

    /** The house's clock has stamps in the hour that Belgian summer time skipped on 27 March 2016. */
    @Test
    void tellsThatTheHouseClockDidNotFollowSummerTime() throws IOException, LogNotUnderstood {
        Path log = log("house-nine-rooms.csv");
        long skipped = Files.readAllLines(log).stream()
                .filter(line -> line.startsWith("\"2016-03-27 02:"))
                .count();

        LoggerImport.Result result = read(log, LogOptions.of("room").withZone(BELGIUM));

        assertThat(skipped).isPositive();
        assertThat(result.report().unreadableCount()).isEqualTo(skipped);
        assertThat(result.report().unreadable())
                .allSatisfy(row ->
                        assertThat(row.reason()).contains("summer time skips").contains("+01:00"));
    }

    @Test
    void takesTheFirstRoomUnlessTold() throws IOException, LogNotUnderstood {
        LoggerImport.Result result =
                read(log("house-nine-rooms.csv"), LogOptions.of("room").withZone(BELGIUM));

        assertThat(result.report().guesses())
                .anyMatch(guess -> guess.startsWith("temperature from column T1, out of T1, T2"))
                .anyMatch(guess -> guess.startsWith("relative humidity from column RH_1"));
    }

    @Test
    void readsTheStationWithItsPressure() throws IOException, LogNotUnderstood {
        Path log = log("house-nine-rooms.csv");
        String[] first = cells(Files.readAllLines(log).get(1));
        List<String> names = List.of(cells(Files.readAllLines(log).get(0)));

        LoggerImport.Result result = read(
                log,
                LogOptions.of("station")
                        .withZone(BELGIUM)
                        .withTempColumn("T_out")
                        .withRhColumn("RH_out")
                        .withPressureColumn("Press_mm_hg"));

        // 1 mm Hg = 133.322387415 Pa, NIST SP 811 appendix B
        double expected = Double.parseDouble(first[names.indexOf("Press_mm_hg")]) * 1.33322387415;
        assertThat(result.readings().get(0).pressureHpa()).isEqualTo(expected);
    }
}
