package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.schema.record.Trial;

/**
 * A column that stands beside the climate in the model.
 *
 * @param parameter its name in the parameter {@code covariates}; empty for the climate
 * @param estimate name of its estimate
 * @param origin where it is zero, in words; empty for the climate
 * @param per follows the response's unit
 * @param meaning of its estimate, with a place for the response
 * @param reading of one attempt
 */
record KindCovariate(String parameter, String estimate, String origin, String per, String meaning, Reading reading) {

    /** {@code h = (RH − 50 %) / 10 %}. */
    static final KindCovariate HUMIDITY = new KindCovariate(
            "", "humidity", "", "per 10 %RH", "change of the mean %s at 50 %%RH", Reading.column(KindCovariate::h));

    /** h², of the trial's own h. */
    static final KindCovariate HUMIDITY_SQUARED = new KindCovariate(
            "",
            "humidity.squared",
            "",
            "per (10 %RH)²",
            "bend of the mean %s over humidity: half the change of its slope per 10 %%RH",
            Reading.column(trial -> h(trial) * h(trial)));

    /** {@code (T − 21 °C) / 5 K}. */
    static final KindCovariate TEMPERATURE = new KindCovariate(
            "",
            "temperature",
            "",
            "per 5 K",
            "change of the mean %s with air temperature, from 21 °C",
            Reading.column(trial -> (trial.climate().tempC() - 21) / 5));

    /** In every summary, in this order. */
    static final List<KindCovariate> CLIMATE = List.of(HUMIDITY, HUMIDITY_SQUARED, TEMPERATURE);

    private static double h(Trial trial) {
        return (trial.climate().rhPct() - 50) / 10;
    }

    /** The angle of arrival, or of the cut. */
    static KindCovariate approachAngle(double fromDeg) {
        return new KindCovariate(
                "approach_angle_deg",
                "approach.angle",
                "approach angle " + Figures.plain(fromDeg) + "°",
                "per deg",
                "change of the mean %s with the approach angle, from " + Figures.plain(fromDeg) + "°",
                Reading.column(Trial::approachAngleDeg).from(fromDeg));
    }

    /** The speed of arrival. */
    static KindCovariate approachSpeed(double fromMps) {
        return new KindCovariate(
                "approach_speed_mps",
                "approach.speed",
                "approach speed " + Figures.plain(fromMps) + " m/s",
                "per m/s",
                "change of the mean %s with the approach speed, from " + Figures.plain(fromMps) + " m/s",
                Reading.column(Trial::approachSpeedMps).from(fromMps));
    }

    /** Side spin as logged. */
    static KindCovariate sideSpin() {
        return new KindCovariate(
                "side_spin_rps",
                "side.spin",
                "no side spin",
                "per rev/s",
                "change of the mean %s with side spin, from none",
                Reading.column(Trial::sideSpinRps));
    }

    /** Rolling spin over that of natural roll. */
    static KindCovariate rollRatio() {
        return new KindCovariate(
                "roll_ratio",
                "roll.ratio",
                "no roll",
                "per natural roll",
                "change of the mean %s from a sliding to a rolling ball",
                Reading.column(Trial::rollRatio));
    }

    /** Sideways offset of the tip. */
    static KindCovariate tipOffset(double fromMm) {
        return new KindCovariate(
                "tip_offset_mm",
                "tip.offset",
                "tip offset " + Figures.plain(fromMm) + " mm",
                "per mm",
                "change of the mean %s with the tip's sideways offset, from " + Figures.plain(fromMm) + " mm",
                Reading.column(Trial::tipOffsetMm).from(fromMm));
    }
}
