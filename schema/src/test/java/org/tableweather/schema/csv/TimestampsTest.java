package org.tableweather.schema.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The reference is {@code java.time}; the examples are those of RFC 3339, section 5.8 (from memory). */
class TimestampsTest {
    private final Timestamps times = new Timestamps();

    @ParameterizedTest
    @CsvSource({
        "1985-04-12T23:20:50.52Z, 1985-04-12T23:20:50.520Z",
        "1996-12-19T16:39:57-08:00, 1996-12-20T00:39:57Z",
        "1990-12-31T23:59:60Z, 1991-01-01T00:00:00Z",
        "1990-12-31T15:59:60-08:00, 1991-01-01T00:00:00Z",
        "1937-01-01T12:00:27.87+00:20, 1937-01-01T11:40:27.870Z",
        "2026-01-12 18:05:00+01:00, 2026-01-12T17:05:00Z",
        "2026-01-12T18:05+01:00, 2026-01-12T17:05:00Z",
        "2024-02-29T00:00:00Z, 2024-02-29T00:00:00Z"
    })
    void readsWhatTheStandardAllows(String text, String instant) {
        assertThat(times.parse(text)).isEqualTo(Timestamps.Outcome.READ);
        assertThat(times.instant()).isEqualTo(Instant.parse(instant));
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-01-12T18:05:00", "2026-01-12 18:05:00", "2026-01-12T18:05"})
    void tellsThatTheZoneIsMissing(String text) {
        assertThat(times.parse(text)).isEqualTo(Timestamps.Outcome.NO_ZONE);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "yesterday",
                "12.01.2026 18:05",
                "2026-13-01T00:00:00Z",
                "2026-02-29T00:00:00Z",
                "2026-01-12T24:00:01Z",
                "2026-01-12T18:60:00Z",
                "2026-01-12T18:05:61Z",
                "2026-01-12T18:05:00+19:00",
                "2026-01-12",
                "2026-01-12T18:05:0OZ",
                "2O26-01-12T18:05:00Z",
                "-026-01-12T18:05:00Z",
                "2026-01-12T18:05:00+0100"
            })
    void refusesTheRest(String text) {
        assertThat(times.parse(text)).isEqualTo(Timestamps.Outcome.MALFORMED);
    }

    @Test
    void agreesWithThePlatform() {
        Random random = new Random(3);
        for (int i = 0; i < 100_000; i++) {
            long second = (long) (random.nextDouble() * 8e9) - 2_000_000_000L;
            OffsetDateTime time =
                    Instant.ofEpochSecond(second).atOffset(ZoneOffset.ofTotalSeconds((random.nextInt(57) - 28) * 1800));
            String text = time.format(DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX"));

            assertThat(times.parse(text)).as(text).isEqualTo(Timestamps.Outcome.READ);
            assertThat(times.epochSecond()).as(text).isEqualTo(second);
        }
    }
}
