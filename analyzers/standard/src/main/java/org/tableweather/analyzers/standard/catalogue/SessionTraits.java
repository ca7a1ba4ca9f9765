package org.tableweather.analyzers.standard.catalogue;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;

/**
 * What a session's trials have in common: equipment, its age on the session's date, the hygrometer. Numbers are NaN, texts
 * empty, when not stated.
 *
 * @param woolPct wool in the cloth by mass, %
 * @param nylonPct nylon in the cloth by mass, %
 * @param polyesterPct polyester in the cloth by mass, %
 * @param clothAgeDays since the cloth was fitted, days
 * @param playingLengthMm of the table, mm
 * @param ballAgeDays since the balls were made or bought, days
 * @param cleanedDays since the balls were cleaned, days
 * @param bedC temperature of the bed, °C
 * @param accuracyRhPct of the hygrometer, ± %RH as the half-width of an even distribution: as stated, or, where it was calibrated,
 *     what its calibration leaves in doubt at 50 %RH
 * @param corrected whether a calibration corrects the session's readings
 * @param instrument names the hygrometer over all contributions
 * @param delivery {@code ramp} or {@code cue}
 */
public record SessionTraits(
        double woolPct,
        double nylonPct,
        double polyesterPct,
        double clothAgeDays,
        double playingLengthMm,
        double ballAgeDays,
        double cleanedDays,
        double bedC,
        double accuracyRhPct,
        boolean corrected,
        String instrument,
        String delivery) {

    private static final double NONE = Double.NaN;
    private static final double MIDDLE_RH_PCT = 50;

    /** A session of which nothing is stated. */
    public static final SessionTraits UNKNOWN =
            new SessionTraits(NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE, false, "", "");

    /** Reads them off a session's record. */
    public static SessionTraits of(SessionRecord record) {
        return of(record, CorrectedClimate.of(record));
    }

    /** The same where its climate is known already. */
    static SessionTraits of(SessionRecord record, CorrectedClimate climate) {
        Session session = record.session();
        Optional<LocalDate> date = session.startedAt().map(OffsetDateTime::toLocalDate);
        Optional<Cloth> cloth = record.table().cloth();
        Optional<BallSet> balls = record.ballSet();
        return new SessionTraits(
                number(cloth.map(Cloth::woolPct)),
                number(cloth.map(Cloth::nylonPct)),
                number(cloth.map(Cloth::polyesterPct)),
                days(cloth.flatMap(Cloth::fittedOn), date),
                number(Optional.of(record.table().playingLengthMm())),
                days(balls.flatMap(BallSet::madeOn), date),
                days(balls.flatMap(BallSet::cleanedOn), date),
                number(Optional.of(session.statedBedC())),
                accuracyRhPct(record, climate),
                climate.isCorrecting(),
                record.instrument()
                        .map(instrument -> contributor(record.roomKey()) + instrument.id())
                        .orElse(""),
                session.delivery().orElse(""));
    }

    /** The same with a cloth of wool and nylon. */
    SessionTraits withCloth(double wool, double nylon) {
        return new SessionTraits(
                wool,
                nylon,
                polyesterPct,
                clothAgeDays,
                playingLengthMm,
                ballAgeDays,
                cleanedDays,
                bedC,
                accuracyRhPct,
                corrected,
                instrument,
                delivery);
    }

    private static double accuracyRhPct(SessionRecord record, CorrectedClimate climate) {
        OptionalDouble left = climate.rhStandardUncertaintyPct(MIDDLE_RH_PCT);
        return climate.isCorrectingHumidity() && left.isPresent()
                ? Math.sqrt(3) * left.getAsDouble()
                : number(record.instrument().map(Instrument::accuracyRhPct));
    }

    /** Ids of instruments are unique within a contributor only. */
    private static String contributor(String roomKey) {
        return roomKey.substring(0, roomKey.lastIndexOf('/') + 1);
    }

    private static double number(Optional<OptionalDouble> stated) {
        return stated.orElse(OptionalDouble.empty()).orElse(NONE);
    }

    /** NaN also when the date lies before. */
    private static double days(Optional<LocalDate> since, Optional<LocalDate> date) {
        if (since.isEmpty() || date.isEmpty()) {
            return NONE;
        }
        long days = ChronoUnit.DAYS.between(since.get(), date.get());
        return days < 0 ? NONE : days;
    }
}
