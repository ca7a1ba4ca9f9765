package org.tableweather.analyzers.standard.statistics.binomial;

/**
 * Attempts of one room under one set of columns, as one session's: the model needs only their number and how many went in.
 *
 * @param cluster the room
 * @param columns x₁ ... xₖ, without a column of ones; finite
 * @param made how many went in
 * @param attempts at least 1 and at least {@code made}
 */
public record BinomialCell(String cluster, double[] columns, long made, long attempts) {

    /**
     * Checks and copies.
     *
     * @throws IllegalArgumentException outside the bounds
     */
    public BinomialCell {
        if (attempts < 1 || made < 0 || made > attempts) {
            throw new IllegalArgumentException("cell of " + cluster
                    + " needs 0 <= made <= attempts, attempts >= 1, got " + made + " of " + attempts);
        }
        columns = columns.clone();
        for (double column : columns) {
            if (!Double.isFinite(column)) {
                throw new IllegalArgumentException(
                        "cell of " + cluster + " has a column that is not finite: " + column);
            }
        }
    }

    @Override
    public double[] columns() {
        return columns.clone();
    }
}
