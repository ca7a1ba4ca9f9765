package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.CurveRange;
import org.tableweather.analyzers.standard.catalogue.PooledCurve;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/**
 * The parameters of a {@link PooledKind}, read.
 *
 * @param definition of the kind
 * @param shot empty: the shot with the most usable trials
 * @param outcome empty: the first that some trial has
 * @param bent whether the mean may bend over humidity
 * @param range of the curve
 * @param asked covariates beside the climate
 */
record KindQuestion(
        KindDefinition definition,
        Optional<String> shot,
        Optional<Outcome> outcome,
        boolean bent,
        AskedRange range,
        List<KindCovariate> asked) {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String SHAPE = "shape";
    static final String COVARIATES = "covariates";
    static final String QUADRATIC = "quadratic";
    static final String LINEAR = "linear";

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static KindQuestion of(KindDefinition definition, Parameters parameters) {
        return new KindQuestion(
                definition,
                parameters.text(SHOT),
                parameters.text(RESPONSE).flatMap(definition::outcome),
                parameters.text(SHAPE).orElse(QUADRATIC).equals(QUADRATIC),
                AskedRange.of(parameters),
                listed(definition, parameters.text(COVARIATES).orElse("")));
    }

    private static List<KindCovariate> listed(KindDefinition definition, String list) {
        List<String> names = Arrays.stream(list.split(","))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        List<String> known = definition.covariateParameters();
        for (String name : names) {
            if (!known.contains(name)) {
                throw new IllegalArgumentException("parameter covariates = " + list + ": " + name + " is not one of "
                        + String.join(", ", known) + "; separate several by commas");
            }
        }
        return definition.covariates().stream()
                .filter(covariate -> names.contains(covariate.parameter()))
                .toList();
    }

    /** The same question about one outcome. */
    KindQuestion about(Outcome one) {
        return new KindQuestion(definition, shot, Optional.of(one), bent, range, asked);
    }

    /** The same question about one shot and range of humidity. */
    KindQuestion ofShot(String id, CurveRange curve) {
        return new KindQuestion(
                definition,
                Optional.of(id),
                outcome,
                bent,
                new AskedRange(Optional.of(curve.fromPct()), Optional.of(curve.toPct())),
                asked);
    }

    /** The climate's columns of the model, in order. */
    List<KindCovariate> climate() {
        return bent ? KindCovariate.CLIMATE : List.of(KindCovariate.HUMIDITY, KindCovariate.TEMPERATURE);
    }

    /** The mean of the outcome over humidity, at 21 °C and at the pooled mean of the other covariates. */
    PooledCurve curve(KindPool pool, NestedFit fit) {
        Moments total = pool.total();
        int climate = climate().size();
        double[] origin = new double[1 + climate + asked.size()];
        origin[0] = 1;
        for (int i = 0; i < asked.size(); i++) {
            origin[1 + climate + i] = total.mean(climate + i);
        }
        return new PooledCurve(
                fit,
                pool.rooms,
                CurveRange.of(pool.lowestPct(), pool.highestPct(), range),
                rhPct -> row(origin, (rhPct - 50) / 10));
    }

    private double[] row(double[] origin, double h) {
        double[] row = origin.clone();
        row[1] = h;
        if (bent) {
            row[2] = h * h;
        }
        return row;
    }

    /** All covariates of the model, in order. */
    List<KindCovariate> covariates() {
        List<KindCovariate> all = new ArrayList<>(climate());
        all.addAll(asked);
        return all;
    }
}
