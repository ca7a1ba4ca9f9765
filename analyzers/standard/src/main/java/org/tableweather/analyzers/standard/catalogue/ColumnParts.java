package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.numeric.RowList;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;

/** Parts of trials that are there as columns: the same bits as {@link PartsBuilder} makes of them row by row. */
final class ColumnParts {
    private final TrialColumns trials;
    private final double[][] columns;

    /**
     * Starts.
     *
     * @param trials whose shots
     * @param columns of numbers, NaN where not measured; a column's bit is 1 shifted by its place
     */
    ColumnParts(TrialColumns trials, double[][] columns) {
        this.trials = trials;
        this.columns = columns;
    }

    /** All trials, ordered by shot and pattern. */
    List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        rows().forEach((shot, patterns) -> {
            List<Block> blocks = new ArrayList<>();
            patterns.forEach((pattern, rows) -> blocks.add(block(pattern, rows.all())));
            parts.add(new Part(shot, blocks));
        });
        return parts;
    }

    private Block block(int pattern, int[] rows) {
        double[][] measured = IntStream.range(0, columns.length)
                .filter(column -> (pattern & 1 << column) != 0)
                .mapToObj(column -> columns[column])
                .toArray(double[][]::new);
        MomentsBuilder builder = new MomentsBuilder(measured.length);
        builder.addRows(measured, rows);
        return new Block(pattern, builder.build());
    }

    private SortedMap<String, SortedMap<Integer, RowList>> rows() {
        SortedMap<String, SortedMap<Integer, RowList>> shots = new TreeMap<>();
        int[] patterns = patterns();
        String shot = "";
        int pattern = -1;
        RowList rows = new RowList();
        for (int row = 0; row < patterns.length; row++) {
            if (patterns[row] != pattern || !trials.shot(row).equals(shot)) {
                pattern = patterns[row];
                shot = trials.shot(row);
                rows = shots.computeIfAbsent(shot, id -> new TreeMap<>())
                        .computeIfAbsent(pattern, bits -> new RowList());
            }
            rows.add(row);
        }
        return shots;
    }

    private int[] patterns() {
        int[] patterns = new int[trials.size()];
        for (int i = 0; i < columns.length; i++) {
            double[] column = columns[i];
            int bit = 1 << i;
            for (int row = 0; row < patterns.length; row++) {
                patterns[row] |= Double.isNaN(column[row]) ? 0 : bit;
            }
        }
        return patterns;
    }
}
