package org.tableweather.analyzers.standard.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.catalogue.ReboundHumidity;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

class CorrectedClimateTest {
    private static final LocalDate AUTUMN = LocalDate.of(2025, 10, 1);
    private static final LocalDate WINTER = LocalDate.of(2026, 1, 10);

    /** Worked corrections over MgCl₂ and NaCl at 20 °C (33.07, 75.47 %): a reading of 60 % is 57.7373 %. */
    @Test
    void isThatOfTheNewestCalibrationBeforeTheSession() {
        CorrectedClimate winter =
                CorrectedClimate.of(session("2026-01-12T18:00:00+01:00", both(WINTER), salt(AUTUMN, 75.47, 90)));

        Climate corrected = winter.of(new Climate(21, 60, ClimateSource.LOG));

        assertThat(winter.isCorrecting()).isTrue();
        assertThat(corrected.rhPct()).isCloseTo(57.7373, within(5e-5));
        assertThat(corrected.tempC()).isEqualTo(21);
        assertThat(corrected.source()).isEqualTo(ClimateSource.LOG);
        // a single point, 75.47 − 90, is an offset
        assertThat(CorrectedClimate.of(session("2025-11-12T18:00:00+01:00", both(WINTER), salt(AUTUMN, 75.47, 90)))
                        .of(new Climate(21, 60, ClimateSource.SPOT))
                        .rhPct())
                .isCloseTo(60 - 14.53, within(1e-9));
    }

    /** The same corrections: what an analyzer keeps of a trial at 60 % is h = (57.7373 − 50)/10, and that it was corrected. */
    @Test
    void isTheClimateThatAnalyzersKeep() {
        SessionRecord session = session("2026-01-12T18:00:00+01:00", both(WINTER), List.of());
        SessionMoments kept = new ReboundHumidity().summarise(session, List.of(trialAt(60)));

        assertThat(kept.parts().get(0).blocks().get(0).moments().mean(0)).isCloseTo(0.77373, within(5e-6));
        assertThat(kept.traits().corrected()).isTrue();
        // two salts known to 0.2 %RH leave less in doubt than the ± 2 %RH of the data sheet
        assertThat(kept.traits().accuracyRhPct()).isBetween(0.2, 2.0);
    }

    private static Trial trialAt(double rhPct) {
        double none = Double.NaN;
        return new Trial(
                "s",
                "1",
                Optional.empty(),
                Kind.KICK,
                "kick-3-rail",
                "",
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                42,
                none,
                Made.NOT_STATED,
                -1,
                none,
                none,
                none,
                none,
                none,
                -1,
                none,
                none,
                "",
                new Climate(21, rhPct, ClimateSource.STATED));
    }

    @Test
    void leavesWhatIsNotKnown() {
        CorrectedClimate climate = CorrectedClimate.of(session("2026-01-12T18:00:00+01:00", both(WINTER), List.of()));

        assertThat(climate.of(Climate.NONE)).isEqualTo(Climate.NONE);
        assertThat(climate.rhStandardUncertaintyPct(Double.NaN)).isEmpty();
        assertThat(climate.of(new Climate(21, 104, ClimateSource.STATED)).rhPct())
                .isEqualTo(104);
    }

    /** ± 2 %RH as a rectangle is u = 1.155 %RH. */
    @Test
    void keepsReadingsThatNobodyCalibrated() {
        CorrectedClimate climate = CorrectedClimate.of(session("2026-01-12T18:00:00+01:00", List.of(), List.of()));
        Climate read = new Climate(21, 60, ClimateSource.STATED);

        assertThat(climate.isCorrecting()).isFalse();
        assertThat(climate.of(read)).isEqualTo(read);
        assertThat(climate.rhStandardUncertaintyPct(60).orElseThrow()).isCloseTo(1.155, within(5e-4));
        assertThat(climate.temperatureStandardUncertaintyK(21)).isEmpty();
    }

    private static List<Calibration> both(LocalDate on) {
        return List.of(salt(on, 33.07, 35.1).get(0), salt(on, 75.47, 77.9).get(0));
    }

    private static List<Calibration> salt(LocalDate on, double reference, double reading) {
        return List.of(new Calibration(
                on,
                "humidity",
                Optional.of("saturated-salt"),
                Optional.empty(),
                reference,
                reading,
                OptionalDouble.of(0.2)));
    }

    private static SessionRecord session(String startedAt, List<Calibration> one, List<Calibration> other) {
        List<Calibration> all = new ArrayList<>(one);
        all.addAll(other);
        OptionalDouble none = OptionalDouble.empty();
        Instrument instrument = new Instrument(
                "h1", Optional.empty(), List.of("humidity"), OptionalDouble.of(2), none, none, none, all);
        Room room = new Room("r", Optional.empty(), Optional.empty(), none, none, none, List.of());
        PoolTable table = new PoolTable("t", "r", none, none, Optional.empty(), Optional.empty(), Optional.empty());
        Session session = new Session(
                "s",
                "t",
                Optional.empty(),
                Optional.empty(),
                Optional.of("h1"),
                Optional.empty(),
                Optional.empty(),
                Optional.of(OffsetDateTime.parse(startedAt)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                none,
                none,
                none,
                none,
                none,
                Optional.empty());
        return new SessionRecord(
                "p/r",
                "p/r/s",
                "d",
                true,
                room,
                table,
                session,
                Optional.empty(),
                Optional.empty(),
                Optional.of(instrument));
    }
}
