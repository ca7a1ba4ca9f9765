package org.tableweather.schema.logger;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.tableweather.schema.record.ClimateReading;

/**
 * A centred mean over time, for logs that flicker: each reading becomes the mean of those within half a window on either side.
 *
 * <p>It never reaches across a gap, and near an end or a gap both sides are shortened alike, so that a steady drift is left as it is.
 * Means hide how quickly a room changes: it is never done unasked, and what was done is stated.
 *
 * @param window whole width, positive
 * @param maxGap neighbours farther apart are not averaged together
 */
public record Smoothing(Duration window, Duration maxGap) {

    public Smoothing {
        if (window.isNegative() || window.isZero() || maxGap.isNegative() || maxGap.isZero()) {
            throw new IllegalArgumentException("window " + window + " and maxGap " + maxGap + " must be positive");
        }
    }

    /** In words, to be stated with the readings. */
    public String inWords() {
        return "centred mean over " + window.toSeconds() + " s, of each quantity by itself; not"
                + " across gaps of more than " + maxGap.toSeconds() + " s";
    }

    /**
     * The readings smoothed, as many as before, in the order of time.
     *
     * @param readings of one instrument
     */
    public List<ClimateReading> of(List<ClimateReading> readings) {
        List<ClimateReading> sorted = readings.stream()
                .sorted(Comparator.comparing(ClimateReading::time))
                .toList();
        List<ClimateReading> smooth = new ArrayList<>(sorted.size());
        int from = 0;
        while (from < sorted.size()) {
            int to = from + 1;
            while (to < sorted.size() && !isGap(sorted.get(to - 1), sorted.get(to))) {
                to++;
            }
            smoothRun(sorted.subList(from, to), smooth);
            from = to;
        }
        return smooth;
    }

    private boolean isGap(ClimateReading before, ClimateReading after) {
        return Duration.between(before.time(), after.time()).compareTo(maxGap) > 0;
    }

    private void smoothRun(List<ClimateReading> run, List<ClimateReading> smooth) {
        int first = 0;
        int last = 0;
        for (int i = 0; i < run.size(); i++) {
            long reach = reachMillis(run, i);
            long at = millis(run, i);
            while (at - millis(run, first) > reach) {
                first++;
            }
            while (first > 0 && at - millis(run, first - 1) <= reach) {
                first--;
            }
            last = Math.max(last, i);
            while (last > i && millis(run, last) - at > reach) {
                last--;
            }
            while (last + 1 < run.size() && millis(run, last + 1) - at <= reach) {
                last++;
            }
            smooth.add(mean(run.get(i), run.subList(first, last + 1)));
        }
    }

    /** Half a window, or what is left on the shorter side. */
    private long reachMillis(List<ClimateReading> run, int i) {
        long left = millis(run, i) - millis(run, 0);
        long right = millis(run, run.size() - 1) - millis(run, i);
        return Math.min(window.toMillis() / 2, Math.min(left, right));
    }

    private static long millis(List<ClimateReading> run, int i) {
        return run.get(i).time().toEpochMilli();
    }

    private static ClimateReading mean(ClimateReading own, List<ClimateReading> near) {
        return new ClimateReading(
                own.instrument(),
                own.time(),
                near.stream().mapToDouble(ClimateReading::tempC).average().orElseThrow(),
                near.stream().mapToDouble(ClimateReading::rhPct).average().orElseThrow(),
                near.stream().mapToDouble(ClimateReading::pressureHpa).average().orElseThrow(),
                near.stream().mapToDouble(ClimateReading::bedC).average().orElseThrow(),
                own.placement());
    }
}
