package org.tableweather.analyzers.standard.catalogue;

import java.util.Arrays;
import java.util.List;

/** The columns that stand beside the response in the model, the constant aside. */
enum Covariate {
    HUMIDITY(Measure.HUMIDITY, "humidity", "", "", "per 10 %RH", "change of the mean %s at 50 %%RH"),
    HUMIDITY_SQUARED(
            Measure.HUMIDITY_SQUARED,
            "humidity.squared",
            "",
            "",
            "per (10 %RH)²",
            "bend of the mean %s over humidity: half the change of its slope per 10 %%RH"),
    TEMPERATURE(
            Measure.TEMPERATURE,
            "temperature",
            "",
            "",
            "per 5 K",
            "change of the mean %s with air temperature, from 21 °C"),
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
            "change of the mean %s with side spin, from none");

    /** Always in the model, in this order. */
    static final List<Covariate> CLIMATE = List.of(HUMIDITY, HUMIDITY_SQUARED, TEMPERATURE);
    /** In the model when asked for. */
    static final List<Covariate> OPTIONAL = List.of(APPROACH_ANGLE, APPROACH_SPEED, SIDE_SPIN);

    final Measure measure;
    /** Name of its estimate. */
    final String estimate;
    /** Name in the parameter {@code covariates}. */
    final String parameter;
    /** Where it is zero, in words; empty for the climate. */
    final String origin;
    /** Follows the response's unit. */
    final String per;
    /** Of its estimate, with a place for the response. */
    final String meaning;

    Covariate(Measure measure, String estimate, String parameter, String origin, String per, String meaning) {
        this.measure = measure;
        this.estimate = estimate;
        this.parameter = parameter;
        this.origin = origin;
        this.per = per;
        this.meaning = meaning;
    }

    static List<String> parameters() {
        return OPTIONAL.stream().map(covariate -> covariate.parameter).toList();
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
        return OPTIONAL.stream()
                .filter(covariate -> names.contains(covariate.parameter))
                .toList();
    }
}
