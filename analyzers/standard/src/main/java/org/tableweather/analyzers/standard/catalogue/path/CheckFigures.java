package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.numeric.StudentT;

/** Coverage and errors of predictions, with the rooms as the sample. */
final class CheckFigures {

    private static final double COVERAGE = 0.95;
    private static final double MANY = 1e6;

    final boolean withStatistics;
    private final Map<String, List<CheckedSession>> byRoom = new LinkedHashMap<>();
    private final List<CheckedSession> sessions;

    CheckFigures(List<CheckedSession> sessions) {
        this.sessions = sessions;
        withStatistics = sessions.stream().noneMatch(each -> Double.isNaN(each.statisticsDia()));
        sessions.forEach(each ->
                byRoom.computeIfAbsent(each.room(), room -> new ArrayList<>()).add(each));
    }

    int rooms() {
        return byRoom.size();
    }

    long landings() {
        return sessions.stream().mapToLong(each -> each.offsetsDia().size()).sum();
    }

    /** Part of the landings in the band of a probability. */
    double physicsCoverage(double probability) {
        return sessions.stream().mapToLong(each -> each.inPhysics(probability)).sum() / (double) landings();
    }

    /** The same by statistics alone. */
    double statisticsCoverage(double probability) {
        double reach = StudentT.halfWidth(probability, MANY);
        return sessions.stream().mapToLong(each -> each.inStatistics(reach)).sum() / (double) landings();
    }

    /** Coverage with the scatter of rooms as its uncertainty. */
    Estimate coverage(String name, double probability, ToDoubleFunction<CheckedSession> inside, double value) {
        double squares = 0;
        for (List<CheckedSession> room : byRoom.values()) {
            double off = 0;
            for (CheckedSession each : room) {
                off += inside.applyAsDouble(each) - value * each.offsetsDia().size();
            }
            squares += off * off;
        }
        double error = Math.sqrt(squares * rooms() / (rooms() - 1.0)) / landings();
        double reach = error * StudentT.halfWidth(COVERAGE, rooms() - 1.0);
        return new Estimate(
                name,
                100 * value,
                100 * error,
                rooms() - 1.0,
                100 * Math.max(0, value - reach),
                100 * Math.min(1, value + reach),
                "%",
                "landings within the " + Math.round(100 * probability) + " % band");
    }

    static double physicsError(CheckedSession each) {
        return each.observedDia() - each.physicsDia();
    }

    static double statisticsError(CheckedSession each) {
        return each.observedDia() - each.statisticsDia();
    }

    /** Root mean square over sessions. */
    double rms(ToDoubleFunction<CheckedSession> error) {
        return Math.sqrt(sessions.stream()
                        .mapToDouble(each -> error.applyAsDouble(each) * error.applyAsDouble(each))
                        .sum()
                / sessions.size());
    }

    /** The same with each room's own level taken out: what is left is how well changes within a room are foretold. */
    double rmsWithin(ToDoubleFunction<CheckedSession> error) {
        double squares = 0;
        int df = 0;
        for (List<CheckedSession> room : byRoom.values()) {
            double mean = room.stream().mapToDouble(error).sum() / room.size();
            for (CheckedSession each : room) {
                double left = error.applyAsDouble(each) - mean;
                squares += left * left;
            }
            df += room.size() - 1;
        }
        return df == 0 ? Double.NaN : Math.sqrt(squares / df);
    }

    double bias() {
        return sessions.stream().mapToDouble(CheckFigures::physicsError).sum() / sessions.size();
    }

    /**
     * Mean square error by statistics alone less that by physics, over rooms.
     *
     * @return t of the mean; above 0 when physics foretells better
     */
    double advantage() {
        List<Double> differences = new ArrayList<>();
        for (List<CheckedSession> room : byRoom.values()) {
            double sum = 0;
            for (CheckedSession each : room) {
                sum += statisticsError(each) * statisticsError(each) - physicsError(each) * physicsError(each);
            }
            differences.add(sum / room.size());
        }
        double mean = differences.stream().mapToDouble(each -> each).sum() / rooms();
        double squares = differences.stream()
                .mapToDouble(each -> (each - mean) * (each - mean))
                .sum();
        return mean / Math.sqrt(squares / (rooms() - 1.0) / rooms());
    }

    /** Whether the advantage is more than chance. */
    boolean clear() {
        return Math.abs(advantage()) > StudentT.halfWidth(COVERAGE, rooms() - 1.0);
    }
}
