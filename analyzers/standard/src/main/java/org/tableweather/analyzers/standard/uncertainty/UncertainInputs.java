package org.tableweather.analyzers.standard.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Input quantities of a measurement model, with the correlations between them; immutable. */
public final class UncertainInputs {
    private final List<String> names;
    private final List<UncertainValue> values;
    private final double[][] correlation;
    private final boolean observedTogether;

    private UncertainInputs(
            List<String> names, List<UncertainValue> values, double[][] correlation, boolean observedTogether) {
        this.names = List.copyOf(names);
        this.values = List.copyOf(values);
        this.correlation = correlation;
        this.observedTogether = observedTogether;
    }

    /** No inputs yet. */
    public static UncertainInputs none() {
        return new UncertainInputs(List.of(), List.of(), new double[0][0], false);
    }

    /**
     * Means of quantities that were read together, set by set, with the correlation of the means:
     * {@code r(x̄, ȳ) = Σ(xₖ−x̄)(yₖ−ȳ) / √(Σ(xₖ−x̄)² Σ(yₖ−ȳ)²)}.
     *
     * @param names one per quantity
     * @param sets one row per set of readings, one column per quantity; at least two rows
     * @source JCGM100
     */
    public static UncertainInputs observedTogether(List<String> names, double[][] sets) {
        List<UncertainValue> means = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            int column = i;
            means.add(UncertainValue.ofObservations(
                    Arrays.stream(sets).mapToDouble(row -> row[column]).toArray()));
        }
        double[][] r = identity(names.size());
        for (int i = 0; i < r.length; i++) {
            for (int j = 0; j < i; j++) {
                r[i][j] = r[j][i] = correlation(sets, i, j, means);
            }
        }
        return new UncertainInputs(names, means, r, true);
    }

    /** These and one more, independent of all so far. */
    public UncertainInputs and(String name, UncertainValue value) {
        if (names.contains(name)) {
            throw new IllegalArgumentException("input " + name + " is there already");
        }
        List<String> moreNames = new ArrayList<>(names);
        moreNames.add(name);
        List<UncertainValue> moreValues = new ArrayList<>(values);
        moreValues.add(value);
        double[][] more = identity(moreNames.size());
        for (int i = 0; i < correlation.length; i++) {
            System.arraycopy(correlation[i], 0, more[i], 0, correlation.length);
        }
        return new UncertainInputs(moreNames, moreValues, more, false);
    }

    /**
     * These with a correlation between two of them.
     *
     * @param first name of an input
     * @param second name of another
     * @param coefficient −1 to 1
     * @throws IllegalArgumentException if the coefficient is outside, or an input is not known
     */
    public UncertainInputs correlated(String first, String second, double coefficient) {
        if (!(Math.abs(coefficient) <= 1)) {
            throw new IllegalArgumentException(
                    "correlation " + coefficient + " of " + first + " and " + second + " is outside -1 to 1");
        }
        int i = indexOf(first);
        int j = indexOf(second);
        if (i == j) {
            throw new IllegalArgumentException("an input's correlation with itself is 1: " + first);
        }
        double[][] changed = Arrays.stream(correlation).map(double[]::clone).toArray(double[][]::new);
        changed[i][j] = changed[j][i] = coefficient;
        return new UncertainInputs(names, values, changed, false);
    }

    /** How many inputs. */
    public int size() {
        return values.size();
    }

    /** Their names, in order. */
    public List<String> names() {
        return names;
    }

    /** Their values, in order. */
    public List<UncertainValue> values() {
        return values;
    }

    /** The estimates, in order. */
    public double[] estimates() {
        return values.stream().mapToDouble(UncertainValue::value).toArray();
    }

    /** Correlation of the i-th and j-th input. */
    public double correlation(int i, int j) {
        return correlation[i][j];
    }

    /** Whether all inputs are means of the same sets of readings and nothing else. */
    boolean areObservedTogether() {
        return observedTogether;
    }

    private int indexOf(String name) {
        int index = names.indexOf(name);
        if (index < 0) {
            throw new IllegalArgumentException("no input " + name + " among " + names);
        }
        return index;
    }

    private static double correlation(double[][] sets, int i, int j, List<UncertainValue> means) {
        double ij = 0;
        double ii = 0;
        double jj = 0;
        for (double[] set : sets) {
            double di = set[i] - means.get(i).value();
            double dj = set[j] - means.get(j).value();
            ij += di * dj;
            ii += di * di;
            jj += dj * dj;
        }
        return ii == 0 || jj == 0 ? 0 : Math.max(-1, Math.min(1, ij / Math.sqrt(ii * jj)));
    }

    private static double[][] identity(int size) {
        double[][] matrix = new double[size][size];
        for (int i = 0; i < size; i++) {
            matrix[i][i] = 1;
        }
        return matrix;
    }

    /**
     * Refuses correlations of which some combination of the inputs would get a negative variance: Cholesky's factor must exist, up to
     * rounding.
     */
    void requireCorrelationsHoldTogether() {
        double[][] r = correlation;
        double[][] factor = new double[r.length][r.length];
        for (int i = 0; i < r.length; i++) {
            for (int j = 0; j <= i; j++) {
                double rest = r[i][j];
                for (int k = 0; k < j; k++) {
                    rest -= factor[i][k] * factor[j][k];
                }
                boolean impossible = i == j ? rest < -1e-9 : factor[j][j] == 0 && Math.abs(rest) > 1e-6;
                if (impossible) {
                    throw new IllegalArgumentException(
                            "these correlations cannot hold together: " + Arrays.deepToString(r));
                }
                factor[i][j] = i == j ? Math.sqrt(Math.max(0, rest)) : factor[j][j] == 0 ? 0 : rest / factor[j][j];
            }
        }
    }
}
