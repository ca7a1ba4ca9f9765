package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;

/**
 * The coefficient of rolling as roll-outs give it.
 *
 * @param mean of the room's sessions, or of the rooms
 * @param deviation how far the cloth that is predicted for may be from it: for a room of the pool, how its sessions differ and what
 *     their attempts leave open; for a new one, how rooms differ
 * @param ofRoom whether it is the room's own
 */
record RollingEstimate(double mean, double deviation, boolean ofRoom) {
    private static final int FEWEST_ATTEMPTS = 3;
    private static final int FEWEST_ROOMS = 3;

    /**
     * From the room's own roll-outs; else from those of at least three rooms.
     *
     * @param sessions of the pool, in order
     * @param room to predict for; empty for a new one
     */
    static Optional<RollingEstimate> of(List<SessionSummary<PathSummary>> sessions, Optional<String> room) {
        SortedMap<String, List<Rolling>> byRoom = new TreeMap<>();
        for (SessionSummary<PathSummary> each : sessions) {
            if (each.summary().rolling().count() > 0) {
                byRoom.computeIfAbsent(each.roomKey(), key -> new ArrayList<>())
                        .add(each.summary().rolling());
            }
        }
        Optional<RollingEstimate> own = room.map(byRoom::get).flatMap(RollingEstimate::ofRoom);
        return own.isPresent() ? own : ofNewRoom(byRoom);
    }

    private static Optional<RollingEstimate> ofRoom(List<Rolling> sessions) {
        int attempts = sessions.stream().mapToInt(Rolling::count).sum();
        if (attempts < FEWEST_ATTEMPTS) {
            return Optional.empty();
        }
        double squares = sessions.stream().mapToDouble(Rolling::squares).sum();
        double within = squares / Math.max(1, attempts - sessions.size());
        double[] means = sessions.stream().mapToDouble(Rolling::mean).toArray();
        double variance = variance(means) + within / attempts;
        return Optional.of(new RollingEstimate(mean(means), Math.sqrt(variance), true));
    }

    private static Optional<RollingEstimate> ofNewRoom(Map<String, List<Rolling>> byRoom) {
        double[] means = byRoom.values().stream()
                .mapToDouble(
                        room -> mean(room.stream().mapToDouble(Rolling::mean).toArray()))
                .toArray();
        if (means.length < FEWEST_ROOMS) {
            return Optional.empty();
        }
        double deviation = Math.sqrt(variance(means) * (1 + 1.0 / means.length));
        return Optional.of(new RollingEstimate(mean(means), deviation, false));
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    /** With one less than there are in the denominator; 0 for one. */
    private static double variance(double[] values) {
        double mean = mean(values);
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        return values.length < 2 ? 0 : squares / (values.length - 1);
    }
}
