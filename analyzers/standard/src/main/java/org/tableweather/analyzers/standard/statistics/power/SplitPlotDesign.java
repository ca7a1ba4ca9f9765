package org.tableweather.analyzers.standard.statistics.power;

import java.util.Arrays;

/**
 * A planned study: every room holds the same climates, a session each time; trials of one session share its climate.
 *
 * @param rooms at least 1
 * @param climates the settings, at least 2 different, in the unit of the slope: (RH − 50 %)/10 % for a slope per 10 %RH
 * @param sessionsPerClimate times each is held in each room, at least 1
 * @param trialsPerSession at least 1
 */
public record SplitPlotDesign(int rooms, double[] climates, int sessionsPerClimate, int trialsPerSession) {

    /**
     * Checks and copies.
     *
     * @throws IllegalArgumentException outside the bounds
     */
    public SplitPlotDesign {
        if (rooms < 1 || sessionsPerClimate < 1 || trialsPerSession < 1) {
            throw new IllegalArgumentException("rooms, sessions per climate and trials must be at least 1, got " + rooms
                    + ", " + sessionsPerClimate + ", " + trialsPerSession);
        }
        climates = climates.clone();
        if (!(Arrays.stream(climates).allMatch(Double::isFinite)
                && Arrays.stream(climates).distinct().count() >= 2)) {
            throw new IllegalArgumentException("two different climates are needed, got " + Arrays.toString(climates));
        }
    }

    @Override
    public double[] climates() {
        return climates.clone();
    }

    /** The same with another number of rooms. */
    public SplitPlotDesign withRooms(int other) {
        return new SplitPlotDesign(other, climates, sessionsPerClimate, trialsPerSession);
    }

    /** The same with each climate held another number of times. */
    public SplitPlotDesign withSessionsPerClimate(int other) {
        return new SplitPlotDesign(rooms, climates, other, trialsPerSession);
    }

    /** Sessions in one room. */
    public int sessionsPerRoom() {
        return climates.length * sessionsPerClimate;
    }

    /** {@code Σ (x − x̄)²} over the sessions of one room. */
    public double spread() {
        return sessionsPerClimate * squares(climates);
    }

    static double squares(double[] values) {
        double mean = Arrays.stream(values).average().orElseThrow();
        return Arrays.stream(values).map(x -> (x - mean) * (x - mean)).sum();
    }
}
