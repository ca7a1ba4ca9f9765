package org.tableweather.analyzers.standard.statistics;

/**
 * Gathers {@link Moments} row by row: {@code d = A − a}, {@code a += d/n}, {@code M += d d' (n−1)/n}.
 *
 * @source Welford1962
 */
public final class MomentsBuilder {

    private final double[] mean;
    private final double[] cross;
    private final double[] apart;
    private long n;

    /** Starts with no rows. */
    public MomentsBuilder(int columns) {
        mean = new double[columns];
        cross = new double[Moments.packedLength(columns)];
        apart = new double[columns];
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

    /** What was gathered so far. */
    public Moments build() {
        return new Moments(n, mean, cross);
    }
}
