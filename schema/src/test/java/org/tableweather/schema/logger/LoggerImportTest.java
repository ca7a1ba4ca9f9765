package org.tableweather.schema.logger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.ClimateReading;

class LoggerImportTest {
    private static final LogOptions UTC = LogOptions.of("h1").withZone(ZoneOffset.UTC);

    private static LoggerImport.Result read(String log, LogOptions options) throws IOException, LogNotUnderstood {
        return LoggerImport.read(new ByteArrayInputStream(log.getBytes(StandardCharsets.UTF_8)), options);
    }

    private static List<String> times(LoggerImport.Result result) {
        return result.readings().stream()
                .map(reading -> reading.time().toString())
                .toList();
    }

    @Nested
    class Columns {
        @Test
        void readsQuotedAndPaddedNumbersUnderArbitraryNames() throws IOException, LogNotUnderstood {
            LoggerImport.Result result = read("""
                    "Zeitstempel";"Temperatur °C";"rel. Feuchte %"
                    "2026-01-12 18:00:00";" 2,1500000000000000e+01";"  38,250 "
                    """, UTC);

            ClimateReading reading = result.readings().get(0);
            assertThat(reading.tempC()).isEqualTo(21.5);
            assertThat(reading.rhPct()).isEqualTo(38.25);
            assertThat(reading.instrument()).isEqualTo("h1");
            assertThat(result.report().guesses())
                    .anyMatch(guess -> guess.contains("semicolon-separated, decimal comma"));
        }

        @Test
        void takesTheLeadingCellForARowNumberWhenTheHeaderIsOneShort() throws IOException, LogNotUnderstood {
            LoggerImport.Result result = read("""
                    "date","Temperature","Humidity"
                    "1","2026-01-12 18:00:00",21,38
                    "2","2026-01-12 18:01:00",22,39
                    """, UTC);

            assertThat(result.readings()).extracting(ClimateReading::rhPct).containsExactly(38.0, 39.0);
            assertThat(result.report().guesses()).anyMatch(guess -> guess.contains("one column fewer"));
        }

        @Test
        void joinsDateAndTimeColumns() throws IOException, LogNotUnderstood {
            LoggerImport.Result result = read("Date,Time,Temp,RH\n2026-01-12,18:00:30,21,38\n", UTC);

            assertThat(times(result)).containsExactly("2026-01-12T18:00:30Z");
        }

        @Test
        void pairsTheRoomsOfOneFile() throws IOException, LogNotUnderstood {
            String log = "time,T1,RH_1,T2,RH_2\n2026-01-12 18:00,21,38,22,39\n";

            assertThat(read(log, UTC.withTempColumn("T2")).readings().get(0).rhPct())
                    .isEqualTo(39);
            assertThat(read(log, UTC.withRhColumn("RH_2")).readings().get(0).tempC())
                    .isEqualTo(22);
            assertThat(read(log, UTC).report().guesses()).anyMatch(guess -> guess.contains("out of T1, T2"));
        }

        @Test
        void skipsLinesAboveTheHeader() throws IOException, LogNotUnderstood {
            LoggerImport.Result result = read(
                    "Device 7\nBattery,97\n\nTimestamp,Temperature (°C),Relative humidity (%)\n2026-01-12 18:00,21,38\n",
                    UTC);

            assertThat(result.readings()).hasSize(1);
            assertThat(result.report().guesses()).contains("the header is row 4");
        }

        @Test
        void saysWhichColumnIsMissing() {
            assertThatThrownBy(() -> read("time,temp\n2026-01-12 18:00,21\n", UTC))
                    .isInstanceOf(LogNotUnderstood.class)
                    .hasMessageContaining("relative humidity")
                    .hasMessageContaining("[time, temp]")
                    .hasMessageContaining("rhColumn");
            assertThatThrownBy(() -> read("a,b\n1,2\n", UTC))
                    .isInstanceOf(LogNotUnderstood.class)
                    .hasMessageContaining("header");
            assertThatThrownBy(() -> read("time,temp,rh\n2026-01-12 18:00,21,38\n", UTC.withTempColumn("cellar")))
                    .isInstanceOf(LogNotUnderstood.class)
                    .hasMessageContaining("no column cellar");
            assertThatThrownBy(() -> read("time,temp,rh\n", UTC))
                    .isInstanceOf(LogNotUnderstood.class)
                    .hasMessageContaining("no row below");
        }
    }

    @Nested
    class Units {
        @Test
        void tellsFahrenheitByNameOrByValues() throws IOException, LogNotUnderstood {
            // 68 °F = 20 °C, NIST SP 811 appendix B
            assertThat(read("time,Temp (°F),RH\n2026-01-12 18:00,68,38\n", UTC)
                            .readings()
                            .get(0)
                            .tempC())
                    .isCloseTo(20, within(1e-12));
            assertThat(read("time,temp,rh\n2026-01-12 18:00,68,38\n", UTC)
                            .readings()
                            .get(0)
                            .tempC())
                    .isCloseTo(20, within(1e-12));
            assertThat(read("time,temp,rh\n2026-01-12 18:00,21,38\n", UTC)
                            .readings()
                            .get(0)
                            .tempC())
                    .isEqualTo(21);
            LogOptions celsius = UTC.withTempUnit(LogOptions.TempUnit.CELSIUS);
            assertThat(read("time,temp,rh\n2026-01-12 18:00,48,38\n", celsius)
                            .readings()
                            .get(0)
                            .tempC())
                    .isEqualTo(48);
        }

        @Test
        void takesSharesOfOneForPercent() throws IOException, LogNotUnderstood {
            LoggerImport.Result result = read("time,temp,rh\n2026-01-12 18:00,21,0.5\n", UTC);

            assertThat(result.readings().get(0).rhPct()).isEqualTo(50);
            assertThat(result.report().guesses()).anyMatch(guess -> guess.contains("share of 1"));
        }

        @Test
        void leavesOutWhatNoRoomCanHave() throws IOException, LogNotUnderstood {
            LoggerImport.Result result = read("""
                    time,temp,rh
                    2026-01-12 18:00,21,38
                    2026-01-12 18:01,-85,38
                    2026-01-12 18:02,21,138
                    2026-01-12 18:03,,38
                    2026-01-12 18:04,21,n/a
                    """, UTC);

            assertThat(result.readings()).hasSize(1);
            assertThat(result.report().unreadable())
                    .extracting(LogReport.Row::row)
                    .containsExactlyInAnyOrder(3L, 4L, 5L, 6L);
            assertThat(result.report().unreadableCount()).isEqualTo(4);
        }
    }

    @Nested
    class Times {
        @Test
        void needsAZoneForStampsWithoutOffset() {
            assertThatThrownBy(() -> read("time,temp,rh\n2026-01-12 18:00,21,38\n", LogOptions.of("h1")))
                    .isInstanceOf(LogNotUnderstood.class)
                    .hasMessageContaining("zone");
        }

        @Test
        void readsStampsWithOffsetWithoutAZone() throws IOException, LogNotUnderstood {
            String log = "time,temp,rh\n2026-01-12T18:00:00+01:00,21,38\n2026-01-12 17:01:00 Z,21,38\n";

            assertThat(times(read(log, LogOptions.of("h1"))))
                    .containsExactly("2026-01-12T17:00:00Z", "2026-01-12T17:01:00Z");
        }

        @Test
        void tellsDayFromMonthByTheClocksPace() throws IOException, LogNotUnderstood {
            String european = "time,temp,rh\n11/01/2026 23:50,21,38\n12/01/2026 00:00,21,38\n12/01/2026 00:10,21,38\n";
            String american = "time,temp,rh\n1/11/2026 11:50 PM,21,38\n1/12/2026 12:00 AM,21,38\n";

            assertThat(times(read(european, UTC)).get(0)).isEqualTo("2026-01-11T23:50:00Z");
            assertThat(times(read(american, UTC)).get(0)).isEqualTo("2026-01-11T23:50:00Z");
        }

        @Test
        void asksWhenDayAndMonthCannotBeTold() throws IOException, LogNotUnderstood {
            String log = "time,temp,rh\n01/02/2026 10:00,21,38\n01/02/2026 10:10,21,38\n";

            assertThatThrownBy(() -> read(log, UTC))
                    .isInstanceOf(LogNotUnderstood.class)
                    .hasMessageContaining("more than one way");
            assertThat(times(read(log, UTC.withTimePattern("dd/MM/yyyy HH:mm"))).get(0))
                    .isEqualTo("2026-02-01T10:00:00Z");
        }

        @Test
        void readsSecondsSince1970() throws IOException, LogNotUnderstood {
            // 1 700 000 000 s after 1970-01-01 is 2023-11-14T22:13:20Z, by java.time
            String log = "time,temp,rh\n1700000000,21,38\n1700000060,21,38\n";

            assertThat(times(read(log, LogOptions.of("h1"))).get(0))
                    .isEqualTo(Instant.ofEpochSecond(1_700_000_000L).toString());
        }

        @Test
        void takesTheErrorOfTheClockOff() throws IOException, LogNotUnderstood {
            LogOptions options = UTC.withClockAhead(Duration.ofMinutes(7));

            assertThat(times(read("time,temp,rh\n2026-01-12 18:07,21,38\n", options)))
                    .containsExactly("2026-01-12T18:00:00Z");
        }

        /** Central European time, 2026: summer time began on 29 March at 02:00, and ends on 25 October at 03:00. */
        @Test
        void tellsApartTheHourThatComesTwice() throws IOException, LogNotUnderstood {
            String log = """
                    time,temp,rh
                    2026-10-25 02:00,21,38
                    2026-10-25 02:30,21,38
                    2026-10-25 02:00,21,38
                    2026-10-25 02:30,21,38
                    2026-10-25 03:00,21,38
                    """;

            LoggerImport.Result result = read(log, LogOptions.of("h1").withZone(ZoneId.of("Europe/Oslo")));

            assertThat(times(result))
                    .containsExactly(
                            "2026-10-25T00:00:00Z",
                            "2026-10-25T00:30:00Z",
                            "2026-10-25T01:00:00Z",
                            "2026-10-25T01:30:00Z",
                            "2026-10-25T02:00:00Z");
            assertThat(result.report().ambiguous()).isEqualTo(4);
            assertThat(result.report().backwards()).isZero();
        }

        @Test
        void leavesOutAndTellsTheHourThatSummerTimeSkips() throws IOException, LogNotUnderstood {
            String log = "time,temp,rh\n2026-03-29 01:50,21,38\n2026-03-29 02:10,21,38\n2026-03-29 03:00,21,38\n";

            LoggerImport.Result result = read(log, LogOptions.of("h1").withZone(ZoneId.of("Europe/Oslo")));

            assertThat(times(result)).containsExactly("2026-03-29T00:50:00Z", "2026-03-29T01:00:00Z");
            assertThat(result.report().unreadable()).singleElement().satisfies(row -> {
                assertThat(row.row()).isEqualTo(3);
                assertThat(row.column()).isEqualTo("time");
                assertThat(row.reason()).contains("summer time skips");
            });
        }
    }

    @Nested
    class Order {
        @Test
        void tellsGapsRepeatsAndStepsBack() throws IOException, LogNotUnderstood {
            String log = """
                    time,temp,rh
                    2026-01-12 18:00,21,38
                    2026-01-12 18:10,21,38
                    2026-01-12 18:10,22,39
                    2026-01-12 18:20,21,38
                    2026-01-12 19:40,21,38
                    2026-01-12 18:30,21,38
                    """;

            LoggerImport.Result result = read(log, UTC);

            assertThat(result.report().rows()).isEqualTo(6);
            assertThat(result.report().readings()).isEqualTo(5);
            assertThat(result.report().repeated())
                    .extracting(LogReport.Row::row)
                    .containsExactly(4L);
            assertThat(result.report().backwards()).isEqualTo(1);
            assertThat(result.report().medianStep()).isEqualTo(Duration.ofMinutes(10));
            assertThat(result.report().gaps())
                    .containsExactly(new LogReport.Gap(
                            Instant.parse("2026-01-12T18:30:00Z"), Instant.parse("2026-01-12T19:40:00Z")));
        }
    }
}
