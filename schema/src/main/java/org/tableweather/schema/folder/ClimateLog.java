package org.tableweather.schema.folder;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.schema.check.ClimateChecks;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.record.ClimateReading;

/**
 * The readings of one instrument in the order of time.
 *
 * <p>Between two readings the climate is interpolated linearly if they are at most {@link #MAX_GAP_S} apart; before the
 * first and after the last, that reading stands for {@link #MAX_HOLD_S}.
 */
final class ClimateLog {
    /** Longest gap that is interpolated over, s. */
    static final long MAX_GAP_S = 30 * 60;
    /** Longest time for which the first or last reading stands, s. */
    static final long MAX_HOLD_S = 5 * 60;

    private static final long JUMP_S = 10 * 60;
    private static final long STILL_S = 6 * 3600;
    private static final int STILL_READINGS = 24;

    private long[] seconds = new long[64];
    private double[] tempC = new double[64];
    private double[] rhPct = new double[64];
    private int[] rows = new int[64];
    private int size;
    private boolean ordered = true;
    private int cursor;

    /** Adds a reading. */
    void add(long second, double temp, double rh, long row) {
        if (size == seconds.length) {
            int longer = size + (size >> 1);
            seconds = Arrays.copyOf(seconds, longer);
            tempC = Arrays.copyOf(tempC, longer);
            rhPct = Arrays.copyOf(rhPct, longer);
            rows = Arrays.copyOf(rows, longer);
        }
        ordered &= size == 0 || second >= seconds[size - 1];
        seconds[size] = second;
        tempC[size] = temp;
        rhPct[size] = rh;
        rows[size++] = (int) Math.min(row, Integer.MAX_VALUE);
    }

    /** Puts the readings in order, and takes repeated times out. */
    void close(String instrument, String file, Findings findings) {
        if (!ordered) {
            findings.add(
                    ClimateChecks.READINGS_DISORDERED,
                    Place.file(file),
                    instrument,
                    () -> "readings of instrument " + instrument + " go back in time");
            sort();
        }
        int kept = 0;
        for (int i = 0; i < size; i++) {
            if (kept > 0 && seconds[i] == seconds[kept - 1]) {
                findings.add(
                        ClimateChecks.READING_REPEATED,
                        Place.row(file, rows[i]),
                        instrument,
                        () -> "instrument " + instrument + " was read at this time already");
                continue;
            }
            move(i, kept++);
        }
        size = kept;
        judge(file, findings);
    }

    /** Judges the readings as a series. */
    private void judge(String file, Findings findings) {
        Still still = new Still();
        for (int i = 0; i < size; i++) {
            if (i > 0 && seconds[i] - seconds[i - 1] <= JUMP_S) {
                jump(i, file, findings);
            }
            int from = still.take(i);
            if (from >= 0) {
                int to = i;
                findings.add(
                        ClimateChecks.HUMIDITY_STUCK,
                        Place.cell(file, rows[i], "rh_pct"),
                        Double.toString(rhPct[i]),
                        () -> (to - from + 1) + " readings over " + (seconds[to] - seconds[from]) / 3600 + " h all say "
                                + rhPct[to] + " %RH");
            }
        }
    }

    /** A run of readings of equal humidity. */
    private final class Still {
        private int from;
        private double low;
        private double high;
        private boolean told;

        /** Takes the next reading; the beginning of a run that is stuck, told once, else −1. */
        int take(int i) {
            if (i == 0 || rhPct[i] != rhPct[from]) {
                from = i;
                low = tempC[i];
                high = tempC[i];
            }
            low = Math.min(low, tempC[i]);
            high = Math.max(high, tempC[i]);
            boolean stuck =
                    i - from >= STILL_READINGS - 1 && seconds[i] - seconds[from] >= STILL_S && high - low > 1 && !told;
            told |= stuck;
            return stuck ? from : -1;
        }
    }

    private void jump(int i, String file, Findings findings) {
        if (Math.abs(tempC[i] - tempC[i - 1]) > 5) {
            findings.add(
                    ClimateChecks.TEMPERATURE_JUMP,
                    Place.cell(file, rows[i], "temp_c"),
                    Double.toString(tempC[i]),
                    () -> "the reading before says " + tempC[i - 1] + " °C");
        }
        boolean failed = rhPct[i] == 0 || rhPct[i - 1] == 0;
        if (!failed && Math.abs(rhPct[i] - rhPct[i - 1]) > 15) {
            findings.add(
                    ClimateChecks.HUMIDITY_JUMP,
                    Place.cell(file, rows[i], "rh_pct"),
                    Double.toString(rhPct[i]),
                    () -> "the reading before says " + rhPct[i - 1] + " %");
        }
    }

    private void move(int from, int to) {
        seconds[to] = seconds[from];
        tempC[to] = tempC[from];
        rhPct[to] = rhPct[from];
        rows[to] = rows[from];
    }

    private void sort() {
        Integer[] order = new Integer[size];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Long.compare(seconds[a], seconds[b]));
        long[] sortedSeconds = new long[size];
        double[] sortedTemp = new double[size];
        double[] sortedRh = new double[size];
        int[] sortedRows = new int[size];
        for (int i = 0; i < size; i++) {
            sortedSeconds[i] = seconds[order[i]];
            sortedTemp[i] = tempC[order[i]];
            sortedRh[i] = rhPct[order[i]];
            sortedRows[i] = rows[order[i]];
        }
        seconds = sortedSeconds;
        tempC = sortedTemp;
        rhPct = sortedRh;
        rows = sortedRows;
    }

    /**
     * Finds the readings around a time.
     *
     * @return whether the log covers it; {@link #tempAt} and {@link #rhAt} then answer for it
     */
    boolean seek(long second) {
        if (size == 0) {
            return false;
        }
        if (!(cursor < size && seconds[cursor] <= second && (cursor + 1 == size || seconds[cursor + 1] > second))) {
            int found = Arrays.binarySearch(seconds, 0, size, second);
            cursor = Math.max(0, found >= 0 ? found : -found - 2);
        }
        if (second < seconds[0]) {
            return seconds[0] - second <= MAX_HOLD_S;
        }
        if (cursor + 1 == size) {
            return second - seconds[cursor] <= MAX_HOLD_S;
        }
        return second == seconds[cursor] || seconds[cursor + 1] - seconds[cursor] <= MAX_GAP_S;
    }

    /** Temperature at the time last sought, °C. */
    double tempAt(long second) {
        return at(tempC, second);
    }

    /** Relative humidity at the time last sought, %. */
    double rhAt(long second) {
        return at(rhPct, second);
    }

    private double at(double[] values, long second) {
        if (second <= seconds[cursor] || cursor + 1 == size) {
            return values[cursor];
        }
        double share = (double) (second - seconds[cursor]) / (seconds[cursor + 1] - seconds[cursor]);
        return values[cursor] + share * (values[cursor + 1] - values[cursor]);
    }

    /** All readings; after {@link #close}. */
    List<ClimateReading> readings(String instrument) {
        List<ClimateReading> readings = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            readings.add(new ClimateReading(
                    instrument, Instant.ofEpochSecond(seconds[i]), tempC[i], rhPct[i], Double.NaN, ""));
        }
        return readings;
    }

    /** The logs of a contribution by instrument id. */
    static final class ByInstrument {
        private final Map<String, ClimateLog> logs = new HashMap<>();

        ClimateLog of(String instrument) {
            return logs.computeIfAbsent(instrument, id -> new ClimateLog());
        }

        /** The log of an instrument; null without. */
        ClimateLog find(String instrument) {
            return logs.get(instrument);
        }

        void close(String file, Findings findings) {
            logs.forEach((instrument, log) -> log.close(instrument, file, findings));
        }
    }
}
