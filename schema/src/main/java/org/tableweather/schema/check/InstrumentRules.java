package org.tableweather.schema.check;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.tableweather.schema.climate.SaltSolution;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.Session;

/** Judges instruments and their comparisons with something better known. */
final class InstrumentRules {
    private static final String HUMIDITY = "humidity";
    private static final String TEMPERATURE = "temperature";
    private static final String SALT = "saturated-salt";
    private static final long YEAR_DAYS = 366;
    private static final double SALT_TOLERANCE_PCT = 1;

    private final Instrument instrument;
    private final String pointer;
    private final Findings findings;

    private InstrumentRules(Instrument instrument, String pointer, Findings findings) {
        this.instrument = instrument;
        this.pointer = pointer;
        this.findings = findings;
    }

    static void check(Contribution contribution, Findings findings) {
        List<Instrument> instruments = contribution.instruments();
        Map<String, List<Session>> sessions = contribution.sessions().stream()
                .filter(session -> session.instrument().isPresent())
                .collect(Collectors.groupingBy(session -> session.instrument().get()));
        for (int i = 0; i < instruments.size(); i++) {
            InstrumentRules rules = new InstrumentRules(instruments.get(i), "/instruments/" + i, findings);
            rules.calibrated();
            rules.stated();
            for (int j = 0; j < instruments.get(i).calibrations().size(); j++) {
                rules.calibration(j);
            }
            rules.age(sessions.getOrDefault(instruments.get(i).id(), List.of()));
        }
    }

    private boolean reads(String quantity) {
        return instrument.quantities().contains(quantity);
    }

    private void calibrated() {
        if (reads(HUMIDITY)
                && instrument.calibrations().stream()
                        .noneMatch(calibration -> calibration.quantity().equals(HUMIDITY))) {
            add(
                    ClimateChecks.UNCALIBRATED,
                    "/calibrations",
                    null,
                    "instrument " + instrument.id()
                            + " was never compared; hygrometers in one room have been seen 4 to 15 %RH apart");
        }
    }

    private void stated() {
        stated(HUMIDITY, "/accuracyRhPct", instrument.accuracyRhPct(), 5, "%RH");
        stated(TEMPERATURE, "/accuracyC", instrument.accuracyC(), 1.5, "K");
        resolution("/resolutionRhPct", instrument.resolutionRhPct(), instrument.accuracyRhPct());
        resolution("/resolutionC", instrument.resolutionC(), instrument.accuracyC());
    }

    private void stated(String quantity, String field, OptionalDouble accuracy, double most, String unit) {
        if (accuracy.isEmpty() && reads(quantity)) {
            add(
                    InstrumentChecks.ACCURACY_UNSTATED,
                    field,
                    null,
                    "instrument " + instrument.id() + " reads " + quantity + " and does not say how accurately");
        }
        if (accuracy.isPresent() && accuracy.getAsDouble() > most) {
            add(
                    InstrumentChecks.ACCURACY_POOR,
                    field,
                    Double.toString(accuracy.getAsDouble()),
                    "± " + accuracy.getAsDouble() + " " + unit);
        }
    }

    private void resolution(String field, OptionalDouble resolution, OptionalDouble accuracy) {
        if (resolution.isPresent() && accuracy.isPresent() && resolution.getAsDouble() > 2 * accuracy.getAsDouble()) {
            add(
                    InstrumentChecks.RESOLUTION_COARSE,
                    field,
                    Double.toString(resolution.getAsDouble()),
                    "steps of " + resolution.getAsDouble() + " against an accuracy of ± " + accuracy.getAsDouble());
        }
    }

    private void calibration(int j) {
        Calibration calibration = instrument.calibrations().get(j);
        String at = "/calibrations/" + j;
        if (!instrument.quantities().isEmpty() && !reads(calibration.quantity())) {
            add(
                    InstrumentChecks.CALIBRATED_QUANTITY,
                    at + "/quantity",
                    calibration.quantity(),
                    "instrument " + instrument.id() + " is not said to read " + calibration.quantity());
        }
        salt(calibration, at);
        error(calibration, at);
        drift(j, at);
    }

    private void salt(Calibration calibration, String at) {
        boolean overSalt = calibration.method().filter(SALT::equals).isPresent();
        boolean humidity = calibration.quantity().equals(HUMIDITY);
        if (!overSalt || !humidity) {
            calibration
                    .salt()
                    .ifPresent(salt -> add(
                            InstrumentChecks.TWO_CALIBRATION_FORMS,
                            at + "/salt",
                            salt,
                            "a salt is named, but the comparison is of " + calibration.quantity() + " by "
                                    + calibration.method().orElse("no stated method")));
            return;
        }
        Optional<SaltSolution> salt = calibration.salt().flatMap(SaltSolution::ofFormula);
        if (salt.isEmpty()) {
            String name = calibration.salt().orElse(null);
            add(InstrumentChecks.SALT_UNKNOWN, at + "/salt", name, "no salt of the table is named");
        } else {
            saltValue(salt.get(), calibration, at);
        }
    }

    /** The published value depends on the temperature: where none is stated, any from 15 to 30 °C will do. */
    private void saltValue(SaltSolution salt, Calibration calibration, String at) {
        double value = calibration.referenceValue();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double coldest = calibration.saltTempC().orElse(SaltSolution.TEMPERATURE.min());
        double hottest = calibration.saltTempC().orElse(SaltSolution.TEMPERATURE.max());
        if (!SaltSolution.TEMPERATURE.contains(coldest)) {
            return; // nothing is tabulated there
        }
        for (double t = coldest; t <= hottest; t++) {
            low = Math.min(low, salt.rhPct(t));
            high = Math.max(high, salt.rhPct(t));
        }
        if (value < low - SALT_TOLERANCE_PCT || value > high + SALT_TOLERANCE_PCT) {
            String range = tenth(low) + " to " + tenth(high) + " % from " + coldest + " to " + hottest + " °C";
            add(
                    InstrumentChecks.SALT_VALUE,
                    at + "/referenceValue",
                    Double.toString(value),
                    "over " + salt.chemical() + " the air has " + range);
        }
    }

    private void error(Calibration calibration, String at) {
        double error = calibration.reading() - calibration.referenceValue();
        boolean humidity = calibration.quantity().equals(HUMIDITY);
        String unit = humidity ? " %RH" : " K";
        OptionalDouble accuracy = humidity ? instrument.accuracyRhPct() : instrument.accuracyC();
        double allowed = Math.hypot(
                accuracy.orElse(Double.POSITIVE_INFINITY),
                2 * calibration.standardUncertainty().orElse(0));
        String message = "it read " + tenth(error) + unit + " too much";
        if (Math.abs(error) > (humidity ? 10 : 2)) {
            add(InstrumentChecks.CALIBRATION_ERROR, at + "/reading", Double.toString(calibration.reading()), message);
        } else if (Math.abs(error) > allowed) {
            add(InstrumentChecks.BEYOND_ACCURACY, at + "/reading", Double.toString(calibration.reading()), message);
        }
    }

    /** Against the comparison before it in the list that is of the same quantity near the same value. */
    private void drift(int j, String at) {
        Calibration later = instrument.calibrations().get(j);
        boolean humidity = later.quantity().equals(HUMIDITY);
        for (int i = j - 1; i >= 0; i--) {
            Calibration earlier = instrument.calibrations().get(i);
            double apart = Math.abs(earlier.referenceValue() - later.referenceValue());
            if (earlier.quantity().equals(later.quantity()) && (!humidity || apart <= 10)) {
                double moved = error(later) - error(earlier);
                if (Math.abs(moved) > (humidity ? 3 : 0.5)) {
                    add(
                            InstrumentChecks.DRIFT,
                            at + "/reading",
                            Double.toString(later.reading()),
                            "its error moved by " + tenth(moved) + " from " + earlier.on() + " to " + later.on());
                }
                return;
            }
        }
    }

    private static double error(Calibration calibration) {
        return calibration.reading() - calibration.referenceValue();
    }

    /** The comparison nearest to a session may lie before or after it. */
    private void age(List<Session> sessions) {
        for (Session session : sessions) {
            if (session.startedAt().isEmpty()) {
                continue;
            }
            LocalDate day = session.startedAt().get().toLocalDate();
            long nearest = instrument.calibrations().stream()
                    .filter(calibration -> calibration.quantity().equals(HUMIDITY))
                    .mapToLong(calibration -> Math.abs(ChronoUnit.DAYS.between(calibration.on(), day)))
                    .min()
                    .orElse(0);
            if (nearest > YEAR_DAYS) {
                add(
                        InstrumentChecks.CALIBRATION_OLD,
                        "/calibrations",
                        session.id(),
                        "the comparison nearest to session " + session.id() + " is " + nearest + " days away");
                return;
            }
        }
    }

    private void add(Check check, String field, String value, String message) {
        findings.add(check, Place.json(pointer + field), value, () -> message);
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }
}
