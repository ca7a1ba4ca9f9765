package org.tableweather.analyzers.standard.statistics;

/**
 * Gathers {@link Moments} row by row: {@code d = A − a}, {@code a += d/n}, {@code M += d d' (n−1)/n}.
 *
 * @source Welford1962
 */
public final class MomentsBuilder {

    /** Rows whose distances from their means are held at once. */
    private static final int CHUNK = 256;

    private final double[] mean;
    private final double[] cross;
    private final double[] apart;
    private final int[] left;
    private final int[] right;
    private long n;

    /** Starts with no rows. */
    public MomentsBuilder(int columns) {
        mean = new double[columns];
        cross = new double[Moments.packedLength(columns)];
        apart = new double[columns];
        left = new int[cross.length];
        right = new int[cross.length];
        for (int i = 0, at = 0; i < columns; i++) {
            for (int j = 0; j <= i; j++, at++) {
                left[at] = i;
                right[at] = j;
            }
        }
    }

    /**
     * Adds one row.
     *
     * @param row finite numbers, one for each column
     */
    public void add(double... row) {
        n++;
        double weight = (n - 1.0) / n;
        for (int i = 0, at = 0; i < mean.length; i++) {
            apart[i] = row[i] - mean[i];
            mean[i] += apart[i] / n;
            for (int j = 0; j <= i; j++, at++) {
                cross[at] += apart[i] * apart[j] * weight;
            }
        }
    }

    /**
     * Adds rows one after the other, to the same bits as {@link #add}: every sum takes its terms in the order of the rows, several
     * sums at a time.
     *
     * @param columns of finite numbers
     * @param rows which, in order
     */
    public void addRows(double[][] columns, int[] rows) {
        double[][] aparts = new double[columns.length][Math.min(CHUNK, rows.length)];
        double[] weights = new double[Math.min(CHUNK, rows.length)];
        for (int from = 0; from < rows.length; from += CHUNK) {
            int count = Math.min(CHUNK, rows.length - from);
            centre(columns, rows, from, count, aparts, weights);
            int at = 0;
            for (; at + 4 <= cross.length; at += 4) {
                addFour(at, aparts, weights, count);
            }
            for (; at < cross.length; at++) {
                addOne(at, aparts, weights, count);
            }
        }
    }

    private void centre(double[][] columns, int[] rows, int from, int count, double[][] aparts, double[] weights) {
        for (int k = 0; k < count; k++) {
            int row = rows[from + k];
            n++;
            weights[k] = (n - 1.0) / n;
            for (int i = 0; i < mean.length; i++) {
                double distance = columns[i][row] - mean[i];
                mean[i] += distance / n;
                aparts[i][k] = distance;
            }
        }
    }

    private void addFour(int at, double[][] aparts, double[] weights, int count) {
        double[] a = aparts[left[at]];
        double[] b = aparts[right[at]];
        double[] c = aparts[left[at + 1]];
        double[] d = aparts[right[at + 1]];
        double[] e = aparts[left[at + 2]];
        double[] f = aparts[right[at + 2]];
        double[] g = aparts[left[at + 3]];
        double[] h = aparts[right[at + 3]];
        double first = cross[at];
        double second = cross[at + 1];
        double third = cross[at + 2];
        double fourth = cross[at + 3];
        for (int k = 0; k < count; k++) {
            double weight = weights[k];
            first += a[k] * b[k] * weight;
            second += c[k] * d[k] * weight;
            third += e[k] * f[k] * weight;
            fourth += g[k] * h[k] * weight;
        }
        cross[at] = first;
        cross[at + 1] = second;
        cross[at + 2] = third;
        cross[at + 3] = fourth;
    }

    private void addOne(int at, double[][] aparts, double[] weights, int count) {
        double[] a = aparts[left[at]];
        double[] b = aparts[right[at]];
        for (int k = 0; k < count; k++) {
            cross[at] += a[k] * b[k] * weights[k];
        }
    }

    /** What was gathered so far. */
    public Moments build() {
        return new Moments(n, mean, cross);
    }
}
