package org.tableweather.analyzers.standard.plan;

import java.util.Optional;
import org.tableweather.analyzers.standard.climate.Settling;
import org.tableweather.schema.climate.MoistAir;

/**
 * From one held climate to the next: what the air takes up, and how long the cloth lags behind.
 *
 * @param fromRhPct humidity held before, %
 * @param toRhPct humidity to hold, %
 * @param waterGPerM3 water to add to each cubic metre of air, g/m³; negative: to take out
 * @param settling of the cloth; empty where no time constant is known
 */
public record ClimateStep(double fromRhPct, double toRhPct, double waterGPerM3, Optional<Lag> settling) {

    /** What may be left of a step: the humidity that a good hygrometer tells apart, %RH (common practice, no source). */
    public static final double LEFT_PCT = 1;

    /**
     * A measured time constant.
     *
     * @param hours τ, h, above 0
     * @param errorHours its stated error, h, at least 0
     */
    public record TimeConstant(double hours, double errorHours) {
        public TimeConstant {
            if (!(hours > 0 && Double.isFinite(hours)) || !(errorHours >= 0 && errorHours < hours)) {
                throw new IllegalArgumentException("time constant " + hours + " h with an error of " + errorHours
                        + " h: it must be above 0, and its error at least 0 and smaller");
            }
        }
    }

    /**
     * How long to wait.
     *
     * @param hours until no more than {@link #LEFT_PCT} of the step is left, as the cloth feels it
     * @param errorHours the time constant's error carried on: the wait is proportional to it
     */
    public record Lag(double hours, double errorHours) {

        /** The wait by the slower cloth that the error allows. */
        public double atMostHours() {
            return hours + errorHours;
        }
    }

    /**
     * The step, at one temperature, by a first-order lag: {@code τ ln(|step| / 1 %RH)}, its error {@code (u(τ)/τ)} of that.
     *
     * @param fromRhPct 0 to 100, %
     * @param toRhPct 0 to 100, %
     * @param tempC of both, °C
     * @param cloth its time constant, where it was measured
     */
    public static ClimateStep of(double fromRhPct, double toRhPct, double tempC, Optional<TimeConstant> cloth) {
        double before = MoistAir.of(tempC, fromRhPct).absoluteHumidityGPerM3();
        double after = MoistAir.of(tempC, toRhPct).absoluteHumidityGPerM3();
        return new ClimateStep(fromRhPct, toRhPct, after - before, cloth.map(known -> lag(toRhPct - fromRhPct, known)));
    }

    private static Lag lag(double step, TimeConstant cloth) {
        double hours = new Settling(cloth.hours()).hoursToWithin(step, LEFT_PCT);
        return new Lag(hours, hours * cloth.errorHours() / cloth.hours());
    }
}
