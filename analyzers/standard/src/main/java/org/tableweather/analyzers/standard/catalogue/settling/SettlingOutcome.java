package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Trial;

/** What may settle. */
enum SettlingOutcome {
    FINAL_REBOUND_ANGLE("final_rebound_angle_deg", "final rebound angle", "deg", Trial::lastReboundAngleDeg),
    LANDING_OFFSET("landing_offset_dia", "landing offset", "diamonds", Trial::landingOffsetDia),
    SPEED_KEPT(
            "speed_kept",
            "share of speed kept at the first rail",
            "1",
            trial -> trial.approachSpeedMps() > 0 ? trial.reboundSpeedMps() / trial.approachSpeedMps() : Double.NaN),
    RUN_OUT("run_out_m", "roll-out", "m", Trial::runOutM),
    THROW("object_angle_deg", "throw", "deg", Trial::objectAngleDeg),
    DEFLECTION("deflection_angle_deg", "deflection", "deg", Trial::deflectionAngleDeg),
    HOP("hop_height_mm", "hop height", "mm", Trial::hopHeightMm),
    SPREAD("spread_nearest_mm", "distance to the nearest ball after a break", "mm", Trial::spreadNearestMm);

    /** Numbers beyond this are no measurement. */
    private static final double LARGEST = 1e9;

    final String parameter;
    final String noun;
    final String unit;
    private final ToDoubleFunction<Trial> reading;

    SettlingOutcome(String parameter, String noun, String unit, ToDoubleFunction<Trial> reading) {
        this.parameter = parameter;
        this.noun = noun;
        this.unit = unit;
        this.reading = reading;
    }

    /** The number; NaN when not measured. */
    double of(Trial trial) {
        double number = reading.applyAsDouble(trial);
        return Math.abs(number) <= LARGEST ? number : Double.NaN;
    }

    static List<String> parameters() {
        return Arrays.stream(values()).map(outcome -> outcome.parameter).toList();
    }

    static SettlingOutcome of(String parameter) {
        return Arrays.stream(values())
                .filter(outcome -> outcome.parameter.equals(parameter))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("parameter response = " + parameter + " is not one of "
                        + String.join(", ", parameters()) + ": choose one of them"));
    }
}
