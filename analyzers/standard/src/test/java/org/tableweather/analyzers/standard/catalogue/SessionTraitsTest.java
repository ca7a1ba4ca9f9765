package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;

class SessionTraitsTest {

    @Test
    void agesAreCountedToTheSessionsOwnDate() {
        SessionTraits traits = SessionTraits.of(record("2026-01-12T18:05:00+01:00"));

        // calendar arithmetic by hand: 2025-03-01 to 2026-01-12 is 365 - 48 days; 2026-01-10 is two days before
        assertThat(traits.clothAgeDays()).isEqualTo(317);
        assertThat(traits.cleanedDays()).isEqualTo(2);
        assertThat(traits.ballAgeDays()).isNaN();
    }

    @Test
    void aDateAfterTheSessionIsNoAge() {
        assertThat(SessionTraits.of(record("2025-02-01T18:05:00+01:00")).clothAgeDays())
                .isNaN();
    }

    @Test
    void namesTheInstrumentOverAllContributions() {
        SessionTraits traits = SessionTraits.of(record("2026-01-12T18:05:00+01:00"));

        assertThat(traits.instrument()).isEqualTo("someone/h1");
        assertThat(traits.accuracyRhPct()).isEqualTo(2);
        // 72 °F is 22.2 °C
        assertThat(traits.bedC()).isEqualTo(200 / 9.0, within(1e-12));
        assertThat(traits.delivery()).isEqualTo("ramp");
        assertThat(traits.woolPct()).isEqualTo(85);
        assertThat(traits.polyesterPct()).isNaN();
        assertThat(traits.playingLengthMm()).isEqualTo(2540);
    }

    static SessionRecord record(String startedAt) {
        Cloth cloth = new Cloth(
                OptionalDouble.of(85),
                OptionalDouble.of(15),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.of(LocalDate.parse("2025-03-01")));
        PoolTable table = new PoolTable(
                "t",
                "cellar",
                OptionalDouble.of(2540),
                OptionalDouble.of(1270),
                Optional.empty(),
                Optional.of(cloth),
                Optional.empty());
        BallSet balls = new BallSet(
                "b1",
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.of(LocalDate.parse("2026-01-10")));
        Instrument instrument = new Instrument(
                "h1",
                Optional.empty(),
                List.of(),
                OptionalDouble.of(2),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                List.of());
        SessionRecord empty = InventedLeague.record(new InventedLeague.Held("someone/cellar", "s", List.of()));
        return new SessionRecord(
                "someone/cellar",
                "someone/cellar/s",
                "s",
                false,
                empty.room(),
                table,
                session(startedAt),
                Optional.of(balls),
                Optional.empty(),
                Optional.of(instrument));
    }

    private static Session session(String startedAt) {
        return new Session(
                "s",
                "t",
                Optional.of("b1"),
                Optional.empty(),
                Optional.of("h1"),
                Optional.empty(),
                Optional.empty(),
                Optional.of(OffsetDateTime.parse(startedAt)),
                Optional.empty(),
                Optional.of("ramp"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(72),
                Optional.empty());
    }
}
