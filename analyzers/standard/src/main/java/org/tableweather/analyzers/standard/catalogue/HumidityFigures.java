package org.tableweather.analyzers.standard.catalogue;

import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;

/** Quantities as estimates with their 95 % interval; degrees of freedom below 1 count as 1. */
final class HumidityFigures {

    static final double COVERAGE = 0.95;

    private HumidityFigures() {}

    static double halfWidth(double df) {
        return StudentT.halfWidth(COVERAGE, Math.max(1, df));
    }

    static double reach(Quantity quantity) {
        return halfWidth(quantity.df()) * quantity.standardError();
    }

    static Estimate estimate(String name, Optional<Quantity> quantity, String unit, String meaning) {
        return quantity.map(known -> estimate(name, known, unit, meaning))
                .orElseGet(() -> new Estimate(
                        name, null, null, null, null, null, unit, meaning + "; left out: see the warnings"));
    }

    static Estimate estimate(String name, Quantity known, String unit, String meaning) {
        double reach = reach(known);
        return new Estimate(
                name,
                known.value(),
                known.standardError(),
                Math.max(1, known.df()),
                known.value() - reach,
                known.value() + reach,
                unit,
                meaning);
    }
}
