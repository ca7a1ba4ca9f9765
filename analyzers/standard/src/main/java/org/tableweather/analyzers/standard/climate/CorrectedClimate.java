package org.tableweather.analyzers.standard.climate;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * The climate of a session's trials after its instrument's calibration, and what is then left in doubt.
 *
 * <p>What is stored is what was read; the correction is made here, where a session is summarised, so that a better calibration never
 * rewrites a contribution. A session without an instrument, or with one that was never calibrated, keeps its readings.
 *
 * @source JCGM100
 */
public final class CorrectedClimate {
    /** Of trials that no instrument is known for: as read. */
    public static final CorrectedClimate NONE = new CorrectedClimate(Optional.empty());

    private final Optional<InstrumentCorrections> corrections;

    private CorrectedClimate(Optional<InstrumentCorrections> corrections) {
        this.corrections = corrections;
    }

    /** By the newest calibration up to the session's day; by the newest of all where the day is not stated. */
    public static CorrectedClimate of(SessionRecord session) {
        return new CorrectedClimate(
                session.instrument().map(instrument -> InstrumentCorrections.of(instrument, day(session.session()))));
    }

    private static LocalDate day(Session session) {
        return session.startedAt().map(OffsetDateTime::toLocalDate).orElse(LocalDate.MAX);
    }

    /** Whether temperature or humidity is changed by a calibration. */
    public boolean isCorrecting() {
        return isCorrectingHumidity()
                || corrections
                        .filter(both -> both.temperature().kind() != InstrumentCorrection.Kind.NONE)
                        .isPresent();
    }

    /** Whether humidity is changed by a calibration. */
    public boolean isCorrectingHumidity() {
        return corrections
                .filter(both -> both.humidity().kind() != InstrumentCorrection.Kind.NONE)
                .isPresent();
    }

    /** The trials with their climates corrected; the very same ones where there is nothing to correct. */
    public Iterable<Trial> of(Iterable<Trial> trials) {
        if (!isCorrecting()) {
            return trials;
        }
        List<Trial> corrected = new ArrayList<>();
        trials.forEach(trial -> corrected.add(trial.withClimate(of(trial.climate()))));
        return corrected;
    }

    /** The same of columns that hold temperature and humidity. */
    public TrialColumns of(TrialColumns trials) {
        return isCorrecting() ? new CorrectedColumns(trials, this) : trials;
    }

    /** The same in {@link Trial#CANONICAL_ORDER}, whatever order they come in. */
    public List<Trial> ordered(Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        of(trials).forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        return ordered;
    }

    /**
     * A climate, corrected.
     *
     * @param read as read; what is not known stays so, and a humidity outside 0 to 100 % is left as it is
     */
    public Climate of(Climate read) {
        if (corrections.isEmpty()) {
            return read;
        }
        double tempC = Double.isNaN(read.tempC())
                ? read.tempC()
                : corrections.get().temperature().apply(read.tempC()).value();
        double rhPct = isHumidity(read.rhPct())
                ? corrections.get().humidity().apply(read.rhPct()).value()
                : read.rhPct();
        return new Climate(tempC, rhPct, read.source());
    }

    /**
     * Standard uncertainty of a corrected relative humidity, %RH; empty where neither an accuracy nor a reference tells.
     *
     * @param rhPct as read, %
     */
    public OptionalDouble rhStandardUncertaintyPct(double rhPct) {
        return corrections.isPresent() && isHumidity(rhPct)
                ? corrections.get().humidity().apply(rhPct).standardUncertainty()
                : OptionalDouble.empty();
    }

    /**
     * Standard uncertainty of a corrected temperature, K; empty where neither an accuracy nor a reference tells.
     *
     * @param tempC as read, °C
     */
    public OptionalDouble temperatureStandardUncertaintyK(double tempC) {
        return corrections.isPresent() && Double.isFinite(tempC)
                ? corrections.get().temperature().apply(tempC).standardUncertainty()
                : OptionalDouble.empty();
    }

    private static boolean isHumidity(double rhPct) {
        return MoistAir.HUMIDITY.contains(rhPct);
    }
}
