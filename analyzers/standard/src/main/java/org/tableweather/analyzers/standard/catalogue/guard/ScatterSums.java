package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder.Attempt;
import org.tableweather.schema.record.Trial;

/** Sums over the trials that have an outcome, from their mean. */
final class ScatterSums {

    private final double[] values;
    private final int[] places;
    private int n;
    private double mean;
    private double place;
    private double rhPct;
    private long humid;
    private double second;
    private double third;
    private double fourth;
    private double orderSquares;
    private double orderProduct;

    ScatterSums(List<Attempt> attempts, ToDoubleFunction<Trial> reading) {
        values = new double[attempts.size()];
        places = new int[attempts.size()];
        for (Attempt attempt : attempts) {
            double value = reading.applyAsDouble(attempt.trial());
            if (Double.isFinite(value)) {
                centre(attempt, value);
            }
        }
        for (int i = 0; i < n; i++) {
            spread(places[i] - place, values[i] - mean);
        }
    }

    private void centre(Attempt attempt, double value) {
        values[n] = value;
        places[n] = attempt.place();
        n++;
        mean += (value - mean) / n;
        place += (attempt.place() - place) / n;
        double humidity = attempt.trial().climate().rhPct();
        if (Double.isFinite(humidity)) {
            humid++;
            rhPct += (humidity - rhPct) / humid;
        }
    }

    private void spread(double later, double apart) {
        double square = apart * apart;
        second += square;
        third += square * apart;
        fourth += square * square;
        orderSquares += later * later;
        orderProduct += later * apart;
    }

    long n() {
        return n;
    }

    OutcomeScatter named(String name) {
        double humidity = humid == 0 ? Double.NaN : rhPct;
        return new OutcomeScatter(name, n, mean, humidity, second, third, fourth, orderSquares, orderProduct);
    }
}
