package org.tableweather.schema.check;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.schema.caution.Cautions;
import org.tableweather.schema.caution.HeldClimate;
import org.tableweather.schema.climate.HeatIndex;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/** Judges the air that the trials of a session felt, and the cautions that it calls for. */
final class SessionClimateRules {
    private static final String FILE = "trials.csv";
    private static final double HELD_RH_PCT = 6;
    private static final double HELD_TEMP_K = 3;
    private static final double HOME_RH_PCT = 60;
    private static final double MOULD_RH_PCT = 80;
    private static final double DAMPEST_C = 30;

    private final Session session;
    private final List<Trial> trials;
    private final int firstRow;
    private final Findings findings;

    private int stated;
    private int unknown;
    private double sumTemp;
    private double sumRh;
    private double lowRh = Double.POSITIVE_INFINITY;
    private double highRh = Double.NEGATIVE_INFINITY;
    private double lowTemp = Double.POSITIVE_INFINITY;
    private double highTemp = Double.NEGATIVE_INFINITY;
    private double tempAtHighRh = Double.NaN;
    private double rhAtHighTemp = Double.NaN;

    private SessionClimateRules(Session session, List<Trial> trials, int firstRow, Findings findings) {
        this.session = session;
        this.trials = trials;
        this.firstRow = firstRow;
        this.findings = findings;
    }

    static void check(Session session, List<Trial> trials, int firstRow, Findings findings) {
        SessionClimateRules rules = new SessionClimateRules(session, trials, firstRow, findings);
        trials.forEach(rules::take);
        rules.sources();
        rules.held();
        rules.air();
    }

    private void take(Trial trial) {
        double temp = trial.climate().tempC();
        double rh = trial.climate().rhPct();
        stated += trial.climate().source() == ClimateSource.STATED ? 1 : 0;
        if (temp != temp || rh != rh) {
            unknown++;
        } else {
            sumTemp += temp;
            sumRh += rh;
        }
        lowRh = rh < lowRh ? rh : lowRh;
        lowTemp = temp < lowTemp ? temp : lowTemp;
        if (rh > highRh) {
            highRh = rh;
            tempAtHighRh = temp;
        }
        if (temp > highTemp) {
            highTemp = temp;
            rhAtHighTemp = rh;
        }
    }

    private void sources() {
        if (unknown > 0) {
            add(
                    ClimateChecks.UNKNOWN,
                    session.id(),
                    unknown + " of " + trials.size() + " trials of session " + session.id()
                            + " have no temperature or no humidity");
        }
        if (stated > 0) {
            add(
                    ClimateChecks.STATED,
                    session.id(),
                    stated + " of " + trials.size() + " trials of session " + session.id()
                            + " take the climate stated by hand");
        }
    }

    private void held() {
        if (highRh - lowRh > HELD_RH_PCT || highTemp - lowTemp > HELD_TEMP_K) {
            add(
                    ClimateChecks.NOT_HELD,
                    session.id(),
                    "session " + session.id() + " runs from " + tenth(lowRh) + " to " + tenth(highRh) + " %RH and from "
                            + tenth(lowTemp) + " to " + tenth(highTemp) + " °C");
        }
        if (highRh > 0 && highRh <= 1) {
            add(
                    ClimateChecks.HUMIDITY_FRACTION,
                    Double.toString(highRh),
                    "no humidity of session " + session.id() + " is above " + highRh + " %");
        }
    }

    private void air() {
        Optional<MoistAir> dampest = airOf(tempAtHighRh, highRh);
        if (dampest.filter(air -> air.tempC() > DAMPEST_C && air.condensesOn(DAMPEST_C))
                .isPresent()) {
            extreme(dampest.get());
            return;
        }
        dampest.ifPresent(this::bed);
        int known = trials.size() - unknown;
        airOf(sumTemp / known, sumRh / known).ifPresent(this::mean);
        if (MoistAir.HUMIDITY.contains(rhAtHighTemp)
                && highTemp >= 27
                && highTemp <= 44
                && HeatIndex.level(highTemp, rhAtHighTemp).compareTo(HeatIndex.Level.DANGER) >= 0) {
            add(
                    ClimateChecks.HEAT,
                    Double.toString(tenth(highTemp)),
                    "session " + session.id() + " reached " + tenth(highTemp) + " °C at " + tenth(rhAtHighTemp)
                            + " %RH");
        }
    }

    private static Optional<MoistAir> airOf(double tempC, double rhPct) {
        return MoistAir.TEMPERATURE.contains(tempC) && MoistAir.HUMIDITY.contains(rhPct)
                ? Optional.of(MoistAir.of(tempC, rhPct))
                : Optional.empty();
    }

    /** Readings that cannot be believed say nothing of heat and damp. */
    private void extreme(MoistAir air) {
        add(
                ClimateChecks.DEW_POINT_EXTREME,
                Double.toString(tenth(air.rhPct())),
                "session " + session.id() + " has " + tenth(air.tempC()) + " °C and " + tenth(air.rhPct())
                        + " %RH, a dew point of " + tenth(air.dewPointC()) + " °C");
    }

    private void bed(MoistAir air) {
        OptionalDouble bed = session.statedBedC();
        if (bed.isEmpty() || !MoistAir.SURFACE.contains(bed.getAsDouble())) {
            return;
        }
        double bedC = bed.getAsDouble();
        if (air.rhPct() > 0 && air.condensesOn(bedC)) {
            add(
                    ClimateChecks.BED_BELOW_DEW_POINT,
                    Double.toString(bedC),
                    "the bed of session " + session.id() + " is at " + tenth(bedC) + " °C, the dew point of the air at "
                            + tenth(air.dewPointC()) + " °C");
        } else if (bedC < air.tempC() && air.rhPctAt(bedC) >= MOULD_RH_PCT) {
            add(
                    ClimateChecks.BED_DAMP,
                    Double.toString(bedC),
                    "the air at the bed of session " + session.id() + " is at " + tenth(air.rhPctAt(bedC)) + " %RH");
        }
    }

    private void mean(MoistAir air) {
        double rh = air.rhPct();
        if (rh > HOME_RH_PCT) {
            add(
                    rh >= MOULD_RH_PCT ? ClimateChecks.DAMP_MOULD : ClimateChecks.DAMP_ROOM,
                    Double.toString(tenth(rh)),
                    "session " + session.id() + " was held at " + tenth(rh) + " %RH");
        }
        HeldClimate climate = HeldClimate.of(air, heldFor());
        OptionalDouble bed = session.statedBedC();
        boolean bedKnown = bed.isPresent() && MoistAir.SURFACE.contains(bed.getAsDouble()) && rh > 0;
        Cautions.of(bedKnown ? climate.withBed(bed.getAsDouble()) : climate)
                .forEach(caution -> findings.caution(session.id(), caution));
    }

    /** From when the climate was held until the last attempt that has a time. */
    private Duration heldFor() {
        Optional<Instant> from = session.settledFrom().or(session::startedAt).map(time -> time.toInstant());
        Optional<Instant> until = trials.get(trials.size() - 1)
                .startedAt()
                .or(() -> session.startedAt().map(time -> time.toInstant()));
        if (from.isEmpty() || until.isEmpty() || until.get().isBefore(from.get())) {
            return Duration.ZERO;
        }
        return Duration.between(from.get(), until.get());
    }

    private void add(Check check, String value, String message) {
        findings.add(check, Place.row(FILE, firstRow), value, () -> message);
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
