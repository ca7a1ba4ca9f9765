package org.tableweather.analyzers.standard.statistics;

import java.util.Arrays;
import java.util.List;

/**
 * Count, means and centred cross-products of rows of numbers: all that a linear model needs of them.
 *
 * <p>{@code n}; {@code aᵢ = Σ Aᵢ / n}; {@code Mᵢⱼ = Σ (Aᵢ − aᵢ)(Aⱼ − aⱼ)}. Raw sums are never formed: they lose every digit
 * of a variance once the mean is large beside the spread. Immutable.
 *
 * @param n number of rows, at least 0
 * @param mean column means
 * @param cross lower triangle of the centred cross-products, by rows: M₀₀, M₁₀, M₁₁, M₂₀ ...
 * @source Welford1962
 * @source Chan1983
 */
public record Moments(long n, double[] mean, double[] cross) {

    /**
     * Checks and copies.
     *
     * @throws IllegalArgumentException for a negative count, arrays that do not fit each other, a number that is not finite,
     *     or a sum of squares below zero
     */
    public Moments {
        if (n < 0 || cross.length != packedLength(mean.length)) {
            throw new IllegalArgumentException("moments need n >= 0 and a lower triangle of "
                    + packedLength(mean.length) + " entries, got n " + n + " and " + cross.length);
        }
        mean = requireFinite(mean.clone());
        cross = requireFinite(cross.clone());
        for (int i = 0; i < mean.length; i++) {
            if (cross[packed(i, i)] < 0) {
                throw new IllegalArgumentException(
                        "sum of squares of column " + i + " is " + cross[packed(i, i)] + ", must be at least 0");
            }
        }
    }

    /** The moments of no rows. */
    public static Moments none(int columns) {
        return new Moments(0, new double[columns], new double[packedLength(columns)]);
    }

    /** All of them merged, pairwise as a tree: the result depends on the order of the list alone. */
    public static Moments merged(List<Moments> parts) {
        return parts.size() == 1 ? parts.get(0) : Sum.of(parts, 0, parts.size()).moments();
    }

    @Override
    public double[] mean() {
        return mean.clone();
    }

    @Override
    public double[] cross() {
        return cross.clone();
    }

    /** Number of columns. */
    public int columns() {
        return mean.length;
    }

    /** Mean of one column. */
    public double mean(int column) {
        return mean[column];
    }

    /** Centred cross-product of two columns. */
    public double cross(int i, int j) {
        return cross[i >= j ? packed(i, j) : packed(j, i)];
    }

    /**
     * The moments of these rows and those: {@code a = a₁ + d n₂/n}, {@code M = M₁ + M₂ + d d' n₁n₂/n}, {@code d = a₂ − a₁}.
     *
     * @param other of the same columns
     * @source Chan1983
     */
    public Moments plus(Moments other) {
        if (n == 0 || other.n == 0) {
            return n == 0 ? other : this;
        }
        Sum sum = new Sum(this);
        sum.add(other.n, other.mean, other.cross);
        return sum.moments();
    }

    /** The moments of some columns, in the order given. */
    public Moments select(int... columns) {
        double[] centre = new double[columns.length];
        double[] products = new double[packedLength(columns.length)];
        for (int i = 0, at = 0; i < columns.length; i++) {
            centre[i] = mean[columns[i]];
            for (int j = 0; j <= i; j++, at++) {
                products[at] = cross(columns[i], columns[j]);
            }
        }
        return new Moments(n, centre, products);
    }

    /** The moments after a constant is taken from each column. */
    public Moments minus(double... constants) {
        double[] centre = mean.clone();
        for (int i = 0; i < centre.length; i++) {
            centre[i] -= constants[i];
        }
        return new Moments(n, centre, cross);
    }

    /**
     * The moments of the columns {@code c + L A}: means {@code c + L a}, cross-products {@code L M L'}. With it a humidity
     * and its square move to another origin exactly: {@code h − o} and {@code h² − 2 o h + o²}.
     *
     * @param linear L, one row for each new column
     * @param constant c
     */
    public Moments transform(double[][] linear, double[] constant) {
        int size = linear.length;
        double[] centre = constant.clone();
        double[][] half = new double[size][mean.length];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < mean.length; j++) {
                centre[i] += linear[i][j] * mean[j];
                for (int k = 0; k < mean.length; k++) {
                    half[i][j] += linear[i][k] * cross(k, j);
                }
            }
        }
        return new Moments(n, centre, outer(half, linear));
    }

    private static double[] outer(double[][] half, double[][] linear) {
        double[] products = new double[packedLength(linear.length)];
        for (int i = 0, at = 0; i < linear.length; i++) {
            for (int j = 0; j <= i; j++, at++) {
                for (int k = 0; k < half[i].length; k++) {
                    products[at] += half[i][k] * linear[j][k];
                }
            }
            products[at - 1] = Math.max(0, products[at - 1]);
        }
        return products;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Moments that
                && n == that.n
                && Arrays.equals(mean, that.mean)
                && Arrays.equals(cross, that.cross);
    }

    @Override
    public int hashCode() {
        return (Long.hashCode(n) * 31 + Arrays.hashCode(mean)) * 31 + Arrays.hashCode(cross);
    }

    @Override
    public String toString() {
        return "Moments[n=" + n + ", mean=" + Arrays.toString(mean) + ", cross=" + Arrays.toString(cross) + "]";
    }

    /** Moments that grow in place. */
    private static final class Sum {

        private final double[] mean;
        private final double[] cross;
        private long n;

        Sum(Moments first) {
            n = first.n;
            mean = first.mean.clone();
            cross = first.cross.clone();
        }

        static Sum of(List<Moments> parts, int from, int to) {
            int half = from + (to - from + 1) / 2;
            if (half == to) {
                return new Sum(parts.get(from));
            }
            Sum sum = of(parts, from, half);
            if (to - half == 1) {
                Moments last = parts.get(half);
                sum.add(last.n, last.mean, last.cross);
            } else {
                Sum rest = of(parts, half, to);
                sum.add(rest.n, rest.mean, rest.cross);
            }
            return sum;
        }

        void add(long more, double[] centre, double[] products) {
            if (more == 0) {
                return;
            }
            // with no rows of its own the share is 1 and the weight 0: it becomes the other
            double share = (double) more / (n + more);
            double weight = n * share;
            for (int i = 0, at = 0; i < mean.length; i++) {
                double apart = centre[i] - mean[i];
                for (int j = 0; j <= i; j++, at++) {
                    cross[at] = cross[at] + products[at] + apart * (centre[j] - mean[j]) * weight;
                }
            }
            for (int i = 0; i < mean.length; i++) {
                mean[i] += (centre[i] - mean[i]) * share;
            }
            n += more;
        }

        Moments moments() {
            return new Moments(n, mean, cross);
        }
    }

    static int packed(int i, int j) {
        return i * (i + 1) / 2 + j;
    }

    static int packedLength(int columns) {
        return columns * (columns + 1) / 2;
    }

    private static double[] requireFinite(double[] numbers) {
        for (double number : numbers) {
            if (!Double.isFinite(number)) {
                throw new IllegalArgumentException("moments must be finite, got " + number);
            }
        }
        return numbers;
    }
}
