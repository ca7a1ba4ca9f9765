package org.tableweather.analyzers.standard.statistics.decay;

/** What is known of where a step begins. */
public enum DecayStart {
    /** Nothing: {@code y = a + d e^(−kt)}. */
    UNKNOWN(2) {
        @Override
        double column(int column, double decayed) {
            return column == 0 ? 1 : decayed;
        }

        @Override
        double slope(int column, double decayed, double hours) {
            return column == 0 ? 0 : -hours * decayed;
        }
    },
    /** It begins at zero: {@code y = d (1 − e^(−kt))}. */
    ZERO(1) {
        @Override
        double column(int column, double decayed) {
            return 1 - decayed;
        }

        @Override
        double slope(int column, double decayed, double hours) {
            return hours * decayed;
        }
    };

    /** Number of levels that are fitted for each step. */
    final int columns;

    DecayStart(int columns) {
        this.columns = columns;
    }

    /** A column that a level multiplies, at {@code e^(−kt)}. */
    abstract double column(int column, double decayed);

    /** Its derivative by k. */
    abstract double slope(int column, double decayed, double hours);
}
