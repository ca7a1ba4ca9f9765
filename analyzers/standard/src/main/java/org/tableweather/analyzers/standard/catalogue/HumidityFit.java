package org.tableweather.analyzers.standard.catalogue;

import java.util.stream.IntStream;
import org.tableweather.analyzers.spi.ConclusionListener;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedModel;

/** The pooled model of a question, fitted, with its curve: what the parts of an answer stand on. */
record HumidityFit(
        HumidityPool pool,
        HumidityQuestion question,
        NestedModel model,
        NestedFit fit,
        HumidityCurve curve,
        ConclusionListener listener) {

    HumidityColumns columns() {
        return question.columns();
    }

    Response response() {
        return question.response();
    }

    /** Unit of a slope. */
    String slopeUnit() {
        return response().per(question.measure().per());
    }

    /** The slope where x is 0, in words. */
    String slopeMeaning() {
        return "change of the mean " + response().noun + " at "
                + question.measure().at();
    }

    NestedFit.Quantity slope() {
        return fit.contrast(columns().slopeRow());
    }

    /** Columns in the fit without a penalty, the constant not counted and moved to zero; the response at the end. */
    int[] plainColumns() {
        int first = columns().wiggles().isEmpty()
                ? columns().count()
                : columns().wiggles().get(0);
        IntStream kept = IntStream.range(1, first)
                .filter(column -> !fit.dropped().contains(column))
                .map(column -> column - 1);
        return IntStream.concat(kept, IntStream.of(columns().count() - 1)).toArray();
    }

    /** A figure of the response in a sentence. */
    String figure(double value) {
        return Figures.fixed(value, response().decimals) + response().sign;
    }
}
