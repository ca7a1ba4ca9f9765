package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;

/**
 * A session's landings beside what the other rooms foretell of them.
 *
 * @param room key of the room
 * @param observedDia mean of the landings
 * @param offsetsDia each landing
 * @param physicsDia mean of the draws
 * @param shares of the draws that lie below each landing
 * @param statisticsDia mean by statistics alone; NaN when it declined
 * @param statisticsSd of a single landing by statistics alone
 */
record CheckedSession(
        String room,
        double observedDia,
        List<Double> offsetsDia,
        double physicsDia,
        double[] shares,
        double statisticsDia,
        double statisticsSd) {

    /** How many landings lie in the middle band of the draws with a probability. */
    long inPhysics(double probability) {
        return java.util.Arrays.stream(shares)
                .filter(share -> Math.abs(share - 0.5) <= probability / 2)
                .count();
    }

    /** How many lie within so many standard deviations of the statistical mean. */
    long inStatistics(double reach) {
        return offsetsDia.stream()
                .filter(offset -> Math.abs(offset - statisticsDia) <= reach * statisticsSd)
                .count();
    }
}
