package org.tableweather.analyzers.standard.catalogue.guard;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Trial;

/** Sums over the trials that have an outcome, from their mean. */
final class ScatterSums {

    private long n;
    private double mean;
    private double place;
    private double rhPct;
    private long humid;
    private double second;
    private double third;
    private double fourth;
    private double orderSquares;
    private double orderProduct;

    ScatterSums(List<Integer> places, List<Trial> ordered, ToDoubleFunction<Trial> reading) {
        for (int at : places) {
            centre(at, ordered.get(at), reading.applyAsDouble(ordered.get(at)));
        }
        for (int at : places) {
            spread(at, reading.applyAsDouble(ordered.get(at)));
        }
    }

    private void centre(int at, Trial trial, double outcome) {
        if (!Double.isFinite(outcome)) {
            return;
        }
        n++;
        mean += (outcome - mean) / n;
        place += (at - place) / n;
        double humidity = trial.climate().rhPct();
        if (Double.isFinite(humidity)) {
            humid++;
            rhPct += (humidity - rhPct) / humid;
        }
    }

    private void spread(int at, double outcome) {
        if (!Double.isFinite(outcome)) {
            return;
        }
        double apart = outcome - mean;
        double square = apart * apart;
        second += square;
        third += square * apart;
        fourth += square * square;
        orderSquares += (at - place) * (at - place);
        orderProduct += (at - place) * apart;
    }

    long n() {
        return n;
    }

    OutcomeScatter named(String name) {
        OptionalDouble humidity = humid == 0 ? OptionalDouble.empty() : OptionalDouble.of(rhPct);
        return new OutcomeScatter(name, n, mean, humidity, second, third, fourth, orderSquares, orderProduct);
    }
}
