package org.tableweather.server.catalogue;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What was measured, by shot, for quantiles. */
final class ResponseSample {
    /** Columns that hold an outcome in numbers. */
    static final List<TrialColumn> RESPONSES = List.of(
            TrialColumn.REBOUND_ANGLE_DEG,
            TrialColumn.REBOUND_SPEED_MPS,
            TrialColumn.FINAL_REBOUND_ANGLE_DEG,
            TrialColumn.LANDING_OFFSET_DIA,
            TrialColumn.RUN_OUT_M,
            TrialColumn.RUN_OUT_LENGTHS,
            TrialColumn.OBJECT_ANGLE_DEG,
            TrialColumn.DEFLECTION_ANGLE_DEG,
            TrialColumn.HOP_HEIGHT_MM,
            TrialColumn.SPREAD_NEAREST_MM,
            TrialColumn.CUE_BALL_TRAVEL_M);

    private static final double[] SHARES = {0.05, 0.25, 0.5, 0.75, 0.95};

    private final Map<String, Values[]> byShot = new TreeMap<>();
    private long trials;

    private static final class Values {
        private double[] values = new double[64];
        private int size;

        void add(double value) {
            if (size == values.length) {
                values = Arrays.copyOf(values, 2 * size);
            }
            values[size++] = value;
        }
    }

    /**
     * Adds a trial.
     *
     * @param row with the columns {@link #RESPONSES}
     * @param first number of the first of them
     */
    void add(String shot, ResultSet row, int first) throws SQLException {
        trials++;
        Values[] ofShot = byShot.computeIfAbsent(shot, any -> new Values[RESPONSES.size()]);
        for (int i = 0; i < ofShot.length; i++) {
            double value = row.getDouble(first + i);
            if (!row.wasNull()) {
                ofShot[i] = ofShot[i] == null ? new Values() : ofShot[i];
                ofShot[i].add(value);
            }
        }
    }

    long trials() {
        return trials;
    }

    /** The quantiles of every response that has values, by shot. */
    List<TrialSummary.Response> responses() {
        List<TrialSummary.Response> responses = new ArrayList<>();
        byShot.forEach((shot, ofShot) -> {
            for (int i = 0; i < ofShot.length; i++) {
                if (ofShot[i] != null) {
                    double[] sorted = Arrays.copyOf(ofShot[i].values, ofShot[i].size);
                    Arrays.sort(sorted);
                    responses.add(new TrialSummary.Response(
                            shot, RESPONSES.get(i).jsonName(), sorted.length, quantiles(sorted)));
                }
            }
        });
        return responses;
    }

    private static Map<String, Double> quantiles(double[] sorted) {
        Map<String, Double> quantiles = new LinkedHashMap<>();
        for (double share : SHARES) {
            quantiles.put(Double.toString(share), quantile(sorted, share));
        }
        return quantiles;
    }

    /**
     * The value below which a share of the values lies: with h = (n − 1) p, {@code x₍⌊h⌋₎ + (h − ⌊h⌋)(x₍⌊h⌋+1₎ − x₍⌊h⌋₎)}, counted
     * from 0.
     *
     * @param sorted at least one value, in order
     * @param share p, 0 to 1
     */
    static double quantile(double[] sorted, double share) {
        double place = (sorted.length - 1) * share;
        int below = (int) place;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }
}
