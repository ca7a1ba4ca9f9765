package org.tableweather.analyzers.standard.plan;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.power.SplitPlotDesign;

/**
 * What is to be done in every room: on every visit each climate is held once, and in each climate every shot is tried equally often.
 *
 * @param rhPct the climates, relative humidity in %, 2 to 20 different ones
 * @param tempC air temperature of all of them, °C
 * @param shots ids of the shots, at least 1, each once
 * @param attempts of each shot in each climate, 1 to 500
 * @param visits 1 to 100
 * @param rooms 1 to 10,000
 */
public record StudyPlan(List<Double> rhPct, double tempC, List<String> shots, int attempts, int visits, int rooms) {
    private static final int MOST_CLIMATES = 20;
    private static final int MOST_SHOTS = 30;

    /**
     * Checks the bounds.
     *
     * @throws IllegalArgumentException outside one; the message holds name, value, bound and remedy
     */
    public StudyPlan {
        rhPct = List.copyOf(rhPct);
        shots = List.copyOf(shots);
        within("climates", rhPct.size(), 2, MOST_CLIMATES);
        within("shots", shots.size(), 1, MOST_SHOTS);
        within("attempts", attempts, 1, 500);
        within("visits", visits, 1, 100);
        within("rooms", rooms, 1, 10_000);
        for (double humidity : rhPct) {
            if (!(humidity >= 5 && humidity <= 95)) {
                throw new IllegalArgumentException(
                        "climate " + humidity + " %RH is outside 5..95: choose one that a room can hold");
            }
        }
        if (rhPct.stream().distinct().count() < rhPct.size()) {
            throw new IllegalArgumentException("climates " + rhPct + " hold one twice: every visit holds each once;"
                    + " for more of them plan more visits");
        }
        if (shots.stream().distinct().count() < shots.size()) {
            throw new IllegalArgumentException("shots " + shots + " hold one twice: name each once");
        }
        if (!(tempC >= 5 && tempC <= 45)) {
            throw new IllegalArgumentException("temperature " + tempC + " °C is outside 5..45: choose one for a room");
        }
    }

    private static void within(String name, int value, int least, int most) {
        if (value < least || value > most) {
            throw new IllegalArgumentException(
                    name + " " + value + " is outside " + least + ".." + most + ": choose within");
        }
    }

    /** Sessions in one room: a session is one held climate. */
    public int sessionsPerRoom() {
        return rhPct.size() * visits;
    }

    /** Attempts in one session, all shots together. */
    public int attemptsPerSession() {
        return shots.size() * attempts;
    }

    /** From the driest climate to the dampest, %RH. */
    public double rangePct() {
        double low = rhPct.stream().mapToDouble(x -> x).min().orElseThrow();
        double high = rhPct.stream().mapToDouble(x -> x).max().orElseThrow();
        return high - low;
    }

    /** As the power of one shot's slope per 10 %RH sees it. */
    SplitPlotDesign design() {
        double[] settings = rhPct.stream().mapToDouble(h -> (h - 50) / 10).toArray();
        return new SplitPlotDesign(rooms, settings, visits, attempts);
    }
}
