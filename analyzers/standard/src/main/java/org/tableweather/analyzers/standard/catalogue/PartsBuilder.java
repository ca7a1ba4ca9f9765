package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;

/** Gathers trials by shot and pattern of measured columns: the columns of a trial one after the other, then its shot. */
public final class PartsBuilder {

    private final SortedMap<String, SortedMap<Integer, MomentsBuilder>> shots = new TreeMap<>();
    private final double[] row;
    private int measured;
    private int filled;
    private String lastShot = "";
    private int lastMeasured;
    private MomentsBuilder last;

    /** None yet, of this number of columns. */
    public PartsBuilder(int columns) {
        row = new double[columns];
    }

    /**
     * The next column's number of the current trial.
     *
     * @param bit of the column, above those before
     * @param number NaN when not measured
     */
    public void column(int bit, double number) {
        if (!Double.isNaN(number)) {
            measured |= bit;
            row[filled++] = number;
        }
    }

    /** The current trial is complete. */
    public void trialOf(String shot) {
        if (last == null || measured != lastMeasured || !shot.equals(lastShot)) {
            int columns = filled;
            last = shots.computeIfAbsent(shot, id -> new TreeMap<>())
                    .computeIfAbsent(measured, bits -> new MomentsBuilder(columns));
            lastShot = shot;
            lastMeasured = measured;
        }
        last.add(row);
        measured = 0;
        filled = 0;
    }

    /** All trials, ordered by shot and pattern. */
    public List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        shots.forEach((shot, patterns) -> {
            List<Block> blocks = new ArrayList<>();
            patterns.forEach((pattern, builder) -> blocks.add(new Block(pattern, builder.build())));
            parts.add(new Part(shot, blocks));
        });
        return parts;
    }
}
