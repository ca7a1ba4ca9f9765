package org.tableweather.analyzers.standard.catalogue.guard;

/** Sums over the trials that have an outcome, from their mean. */
final class ScatterSums {

    private final double[] values;
    private final int[] places;
    private final int n;
    private double mean;
    private double place;
    private double rhPct;
    private long humid;
    private double second;
    private double third;
    private double fourth;
    private double orderSquares;
    private double orderProduct;

    /**
     * Sums.
     *
     * @param attempts their places in the session
     * @param outcome of every attempt of the session
     * @param humidity of every attempt of the session, %
     */
    ScatterSums(int[] attempts, double[] outcome, double[] humidity) {
        values = new double[attempts.length];
        places = new int[attempts.length];
        int measured = 0;
        for (int attempt : attempts) {
            if (Double.isFinite(outcome[attempt])) {
                values[measured] = outcome[attempt];
                places[measured] = attempt;
                measured++;
            }
        }
        n = measured;
        centre(humidity);
        spread();
    }

    private void centre(double[] humidity) {
        double outcome = 0;
        double order = 0;
        double damp = 0;
        long known = 0;
        for (int i = 0; i < n; i++) {
            outcome += (values[i] - outcome) / (i + 1);
            order += (places[i] - order) / (i + 1);
            double rh = humidity[places[i]];
            if (Double.isFinite(rh)) {
                known++;
                damp += (rh - damp) / known;
            }
        }
        mean = outcome;
        place = order;
        rhPct = damp;
        humid = known;
    }

    private void spread() {
        for (int i = 0; i < n; i++) {
            double later = places[i] - place;
            double apart = values[i] - mean;
            double square = apart * apart;
            second += square;
            third += square * apart;
            fourth += square * square;
            orderSquares += later * later;
            orderProduct += later * apart;
        }
    }

    long n() {
        return n;
    }

    OutcomeScatter named(String name) {
        double humidity = humid == 0 ? Double.NaN : rhPct;
        return new OutcomeScatter(name, n, mean, humidity, second, third, fourth, orderSquares, orderProduct);
    }
}
