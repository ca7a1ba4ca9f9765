package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.special.Gamma;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Cells by room, in the order of first appearance, with what does not depend on the parameters.
 *
 * @param scaling of the columns
 * @param clusters rooms
 * @param attempts in all
 * @param constant {@code Σ log C(n, y)}
 * @param saturated log likelihood of every cell at its own proportion, the constant included
 */
record BinomialData(Scaling scaling, List<ClusterCells> clusters, long attempts, double constant, double saturated) {

    static Answer<BinomialData> of(List<BinomialCell> cells) {
        Map<String, List<BinomialCell>> rooms = byRoom(cells);
        long attempts = cells.stream().mapToLong(BinomialCell::attempts).sum();
        long made = cells.stream().mapToLong(BinomialCell::made).sum();
        if (rooms.size() < 2) {
            return Answer.refuse(Cause.TOO_FEW, rooms.size() + " rooms: 2 are needed to see how they differ");
        }
        if (made == 0 || made == attempts) {
            return Answer.refuse(Cause.NO_VARIATION, made + " of " + attempts + " attempts went in");
        }
        if (rooms.size() == attempts) {
            return Answer.refuse(Cause.TOO_FEW, "one attempt in every room: rooms cannot be told from luck");
        }
        Scaling scaling = Scaling.of(cells);
        List<ClusterCells> clusters = rooms.entrySet().stream()
                .map(room -> new ClusterCells(room.getKey(), room.getValue(), scaling))
                .toList();
        double constant = cells.stream().mapToDouble(BinomialData::logChoose).sum();
        double own = cells.stream().mapToDouble(BinomialData::ownProportion).sum();
        return Answer.of(new BinomialData(scaling, clusters, attempts, constant, constant + own));
    }

    private static Map<String, List<BinomialCell>> byRoom(List<BinomialCell> cells) {
        Map<String, List<BinomialCell>> rooms = new LinkedHashMap<>();
        for (BinomialCell cell : cells) {
            if (cell.columns().length != cells.get(0).columns().length) {
                throw new IllegalArgumentException("cells differ in their number of columns");
            }
            rooms.computeIfAbsent(cell.cluster(), room -> new ArrayList<>()).add(cell);
        }
        return rooms;
    }

    private static double logChoose(BinomialCell cell) {
        return Gamma.logGamma(cell.attempts() + 1.0)
                - Gamma.logGamma(cell.made() + 1.0)
                - Gamma.logGamma(cell.attempts() - cell.made() + 1.0);
    }

    private static double ownProportion(BinomialCell cell) {
        double n = cell.attempts();
        return timesLog(cell.made(), cell.made() / n) + timesLog(n - cell.made(), 1 - cell.made() / n);
    }

    private static double timesLog(double count, double p) {
        return count == 0 ? 0 : count * StrictMath.log(p);
    }

    /** Number of coefficients, the intercept included. */
    int coefficients() {
        return scaling.centre().length + 1;
    }
}
