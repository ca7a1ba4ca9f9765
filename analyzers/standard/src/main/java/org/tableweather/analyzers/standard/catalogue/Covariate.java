package org.tableweather.analyzers.standard.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Columns that stand beside the climate in the model when asked for. */
enum Covariate {
    APPROACH_ANGLE(
            Measure.APPROACH_ANGLE,
            "approach.angle",
            "approach_angle_deg",
            "approach angle 45°",
            "per deg",
            "change of the mean %s with the approach angle, from 45°"),
    APPROACH_SPEED(
            Measure.APPROACH_SPEED,
            "approach.speed",
            "approach_speed_mps",
            "approach speed 2 m/s",
            "per m/s",
            "change of the mean %s with the approach speed, from 2 m/s"),
    SIDE_SPIN(
            Measure.SIDE_SPIN,
            "side.spin",
            "side_spin_rps",
            "no side spin",
            "per rev/s",
            "change of the mean %s with side spin, from none"),
    ROLL_RATIO(
            Measure.ROLL_RATIO,
            "roll.ratio",
            "roll_ratio",
            "a sliding ball",
            "per natural roll",
            "change of the mean %s from a sliding ball to one in natural roll"),
    CLOTH_AGE(
            "cloth.age",
            "cloth_age_y",
            "cloth one year old",
            "per year",
            "change of the mean %s with the age of the cloth on the day, from one year") {
        @Override
        double of(SessionTraits traits) {
            return traits.clothAgeDays() / DAYS_PER_YEAR - 1;
        }
    };

    private static final double DAYS_PER_YEAR = 365.25;

    /** The trials' column; empty for what a session states. */
    final Optional<Measure> measure;
    /** Name of its estimate. */
    final String estimate;
    /** Name in the parameter {@code covariates}. */
    final String parameter;
    /** Where it is zero, in words. */
    final String origin;
    /** Follows the response's unit. */
    final String per;
    /** Of its estimate, with a place for the response. */
    final String meaning;

    Covariate(Measure measure, String estimate, String parameter, String origin, String per, String meaning) {
        this(Optional.of(measure), estimate, parameter, origin, per, meaning);
    }

    Covariate(String estimate, String parameter, String origin, String per, String meaning) {
        this(Optional.empty(), estimate, parameter, origin, per, meaning);
    }

    Covariate(Optional<Measure> measure, String estimate, String parameter, String origin, String per, String meaning) {
        this.measure = measure;
        this.estimate = estimate;
        this.parameter = parameter;
        this.origin = origin;
        this.per = per;
        this.meaning = meaning;
    }

    /** What a session states; NaN when it does not, or when it is a column of trials. */
    double of(SessionTraits traits) {
        return Double.NaN;
    }

    static List<String> parameters() {
        return Arrays.stream(values()).map(covariate -> covariate.parameter).toList();
    }

    /** The covariates of a comma list, in the order of the model. */
    static List<Covariate> listed(String list) {
        List<String> names = Arrays.stream(list.split(","))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        for (String name : names) {
            if (!parameters().contains(name)) {
                throw new IllegalArgumentException("parameter covariates = " + list + ": " + name + " is not one of "
                        + String.join(", ", parameters()) + "; separate several by commas");
            }
        }
        return Arrays.stream(values())
                .filter(covariate -> names.contains(covariate.parameter))
                .toList();
    }
}
