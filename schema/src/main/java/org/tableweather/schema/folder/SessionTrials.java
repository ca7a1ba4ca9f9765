package org.tableweather.schema.folder;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.record.Trial;

/** The trials of one session with their rows. */
final class SessionTrials {
    private List<Trial> trials = new ArrayList<>();
    private int[] rows = new int[16];

    void add(Trial trial, long row) {
        if (trials.size() == rows.length) {
            rows = Arrays.copyOf(rows, rows.length * 2);
        }
        rows[trials.size()] = (int) Math.min(row, Integer.MAX_VALUE);
        trials.add(trial);
    }

    int size() {
        return trials.size();
    }

    /** The trials, not to be changed. */
    List<Trial> trials() {
        return Collections.unmodifiableList(trials);
    }

    /** The row of each. */
    int[] rows() {
        return rows;
    }

    /**
     * Puts the trials in canonical order, and reports ids that occur twice.
     *
     * @param file for the findings
     * @param findings takes them
     */
    void sort(String file, Findings findings) {
        if (!isSorted()) {
            Integer[] order = new Integer[trials.size()];
            Arrays.setAll(order, i -> i);
            Arrays.sort(order, (a, b) -> Trial.CANONICAL_ORDER.compare(trials.get(a), trials.get(b)));
            List<Trial> sorted = new ArrayList<>(order.length);
            int[] sortedRows = new int[order.length];
            for (int i = 0; i < order.length; i++) {
                sorted.add(trials.get(order[i]));
                sortedRows[i] = rows[order[i]];
            }
            trials = sorted;
            rows = sortedRows;
        }
        for (int i = 1; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            if (trial.trial().equals(trials.get(i - 1).trial())) {
                int first = rows[i - 1];
                findings.add(
                        StructureChecks.DUPLICATE_TRIAL,
                        Place.cell(file, rows[i], "trial"),
                        trial.trial(),
                        () -> "session " + trial.session() + " has trial " + trial.trial() + " in row " + first
                                + " already");
            }
        }
    }

    private boolean isSorted() {
        for (int i = 1; i < trials.size(); i++) {
            if (Trial.CANONICAL_ORDER.compare(trials.get(i - 1), trials.get(i)) > 0) {
                return false;
            }
        }
        return true;
    }
}
