package org.tableweather.cli.demo;

import java.time.Instant;

/**
 * The climate of one invented session: held at a target, with small slow wandering about it.
 *
 * @param from the first reading
 * @param rhPct true relative humidity every {@link #STEP_SECONDS}, %
 * @param tempC true air temperature at the same times, °C
 */
record HeldClimate(Instant from, double[] rhPct, double[] tempC) {
    /** Seconds between readings. */
    static final int STEP_SECONDS = 300;

    private static final double MEMORY = 0.9;
    private static final double RH_WANDER_PCT = 0.5;
    private static final double TEMP_WANDER_K = 0.1;

    /**
     * Draws one.
     *
     * @param draws where chance comes from
     * @param from the first reading
     * @param readings how many
     * @param rhTargetPct held relative humidity, %
     * @param tempTargetC held temperature, °C
     */
    static HeldClimate draw(SeededDraws draws, Instant from, int readings, double rhTargetPct, double tempTargetC) {
        return new HeldClimate(
                from,
                wandering(draws, readings, rhTargetPct, RH_WANDER_PCT),
                wandering(draws, readings, tempTargetC, TEMP_WANDER_K));
    }

    // first-order autoregression: x' = m·x + sqrt(1 − m²)·normal keeps the standard deviation
    private static double[] wandering(SeededDraws draws, int readings, double target, double sd) {
        double[] values = new double[readings];
        double off = draws.normal(sd);
        for (int i = 0; i < readings; i++) {
            values[i] = target + off;
            off = MEMORY * off + draws.normal(sd * Math.sqrt(1 - MEMORY * MEMORY));
        }
        return values;
    }

    Instant timeOf(int reading) {
        return from.plusSeconds((long) reading * STEP_SECONDS);
    }

    double rhPctAt(Instant time) {
        return at(rhPct, time);
    }

    double tempCAt(Instant time) {
        return at(tempC, time);
    }

    private double at(double[] values, Instant time) {
        double position = (time.getEpochSecond() - from.getEpochSecond()) / (double) STEP_SECONDS;
        int before = Math.min((int) position, values.length - 2);
        double share = position - before;
        return values[before] + share * (values[before + 1] - values[before]);
    }
}
