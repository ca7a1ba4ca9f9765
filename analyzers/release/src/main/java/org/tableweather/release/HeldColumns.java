package org.tableweather.release;

import java.io.IOException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Set;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;

/** The columns of one session after the other, in the same arrays. */
final class HeldColumns implements TrialColumns {
    private final Map<TrialNumber, double[]> numbers = new EnumMap<>(TrialNumber.class);
    private final Set<TrialNumber> wanted;
    private String[] trials = {};
    private String[] shots = {};
    private Kind[] kinds = {};
    private Made[] made = {};
    private boolean[] filled = {};
    private int size;
    private int there;

    HeldColumns(Set<TrialNumber> wanted) {
        this.wanted = wanted;
    }

    /** Makes room for a session of so many trials. */
    void begin(int trialsOfSession) {
        size = trialsOfSession;
        there = 0;
        if (size > trials.length) {
            trials = new String[size];
            shots = new String[size];
            kinds = new Kind[size];
            made = new Made[size];
            filled = new boolean[size];
            wanted.forEach(number -> numbers.put(number, new double[size]));
        }
        Arrays.fill(filled, 0, size, false);
        Arrays.fill(made, 0, size, Made.NOT_STATED);
        wanted.forEach(number -> Arrays.fill(numbers(number), 0, size, Double.NaN));
    }

    /**
     * Takes rows, of one shot.
     *
     * @param places of the rows in the session, from 0
     * @param count how many
     * @throws IOException when there is no such place, or it was taken
     */
    void claim(int[] places, int count, Kind kind, String shot) throws IOException {
        for (int i = 0; i < count; i++) {
            int place = places[i];
            if (place < 0 || place >= size || filled[place]) {
                throw new IOException("a session of " + size + " trials has no place, or not one more, for trial "
                        + (place + 1L) + " in column " + TrialTable.ORDINAL);
            }
            filled[place] = true;
            kinds[place] = kind;
            shots[place] = shot;
        }
        there += count;
    }

    /** Trials that were taken. */
    int taken() {
        return there;
    }

    String[] trials() {
        return trials;
    }

    Made[] made() {
        return made;
    }

    @Override
    public int size() {
        return size;
    }

    @Override
    public double[] numbers(TrialNumber number) {
        double[] column = numbers.get(number);
        if (column == null) {
            if (wanted.contains(number)) {
                return new double[0];
            }
            throw new IllegalArgumentException(number.column() + " was not asked for: name it among the numbers");
        }
        return column;
    }

    @Override
    public String trial(int row) {
        return trials[row];
    }

    @Override
    public String shot(int row) {
        return shots[row];
    }

    @Override
    public Kind kind(int row) {
        return kinds[row];
    }

    @Override
    public Made made(int row) {
        return made[row];
    }
}
