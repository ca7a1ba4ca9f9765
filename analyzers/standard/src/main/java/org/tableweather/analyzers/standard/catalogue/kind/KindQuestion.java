package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;

/**
 * The parameters of a {@link PooledKind}, read.
 *
 * @param definition of the kind
 * @param shot empty: the shot with the most usable trials
 * @param outcome empty: the first that some trial has
 * @param bent whether the mean may bend over humidity
 * @param fromPct where the curve begins, %RH; empty: where the data begin
 * @param toPct where the curve ends, %RH; empty: where the data end
 * @param asked covariates beside the climate
 */
record KindQuestion(
        KindDefinition definition,
        Optional<String> shot,
        Optional<Outcome> outcome,
        boolean bent,
        Optional<Double> fromPct,
        Optional<Double> toPct,
        List<KindCovariate> asked) {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String SHAPE = "shape";
    static final String FROM = "curve_from_pct";
    static final String TO = "curve_to_pct";
    static final String COVARIATES = "covariates";
    static final String QUADRATIC = "quadratic";
    static final String LINEAR = "linear";

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static KindQuestion of(KindDefinition definition, Parameters parameters) {
        Optional<Double> from = humidity(parameters, FROM);
        Optional<Double> to = humidity(parameters, TO);
        if (from.isPresent() && to.isPresent() && !(from.get() < to.get())) {
            throw new IllegalArgumentException("parameter " + FROM + " = " + Figures.plain(from.get())
                    + " is not below " + TO + " = " + Figures.plain(to.get()) + ": set a lower one");
        }
        return new KindQuestion(
                definition,
                parameters.text(SHOT),
                parameters.text(RESPONSE).flatMap(definition::outcome),
                parameters.text(SHAPE).orElse(QUADRATIC).equals(QUADRATIC),
                from,
                to,
                listed(definition, parameters.text(COVARIATES).orElse("")));
    }

    private static Optional<Double> humidity(Parameters parameters, String name) {
        Optional<Double> number = parameters.number(name);
        number.ifPresent(pct -> {
            if (pct < 0 || pct > 100) {
                throw new IllegalArgumentException("parameter " + name + " = " + Figures.plain(pct)
                        + " is outside 0 to 100 %RH: set a relative humidity");
            }
        });
        return number;
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
        return new KindQuestion(definition, shot, Optional.of(one), bent, fromPct, toPct, asked);
    }

    /** The same question about one shot and range of humidity. */
    KindQuestion ofShot(String id, double fromHumidityPct, double toHumidityPct) {
        return new KindQuestion(
                definition,
                Optional.of(id),
                outcome,
                bent,
                Optional.of(fromHumidityPct),
                Optional.of(toHumidityPct),
                asked);
    }

    /** The climate's columns of the model, in order. */
    List<KindCovariate> climate() {
        return bent ? KindCovariate.CLIMATE : List.of(KindCovariate.HUMIDITY, KindCovariate.TEMPERATURE);
    }

    /** All covariates of the model, in order. */
    List<KindCovariate> covariates() {
        List<KindCovariate> all = new ArrayList<>(climate());
        all.addAll(asked);
        return all;
    }
}
