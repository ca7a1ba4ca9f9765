package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;

/**
 * The parameters of {@link ReboundHumidity}, read.
 *
 * @param shot empty: the shot with the most usable trials
 * @param response what is explained
 * @param fromPct where the curve begins, %RH; empty: where the data begin
 * @param toPct where the curve ends, %RH; empty: where the data end
 * @param asked covariates beside the climate
 */
record HumidityQuestion(
        Optional<String> shot,
        Response response,
        Optional<Double> fromPct,
        Optional<Double> toPct,
        List<Covariate> asked) {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String FROM = "curve_from_pct";
    static final String TO = "curve_to_pct";
    static final String COVARIATES = "covariates";

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static HumidityQuestion of(Parameters parameters) {
        Optional<Double> from = humidity(parameters, FROM);
        Optional<Double> to = humidity(parameters, TO);
        if (from.isPresent() && to.isPresent() && !(from.get() < to.get())) {
            throw new IllegalArgumentException("parameter " + FROM + " = " + Figures.plain(from.get())
                    + " is not below " + TO + " = " + Figures.plain(to.get()) + ": set a lower one");
        }
        return new HumidityQuestion(
                parameters.text(SHOT),
                Response.of(parameters.text(RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter)),
                from,
                to,
                Covariate.listed(parameters.text(COVARIATES).orElse("")));
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

    /** All covariates of the model, in order. */
    List<Covariate> covariates() {
        List<Covariate> all = new ArrayList<>(Covariate.CLIMATE);
        all.addAll(asked);
        return all;
    }

    /** Bits of the climate. */
    static int climateBits() {
        return bits(Covariate.CLIMATE);
    }

    /** Bits of all columns of the model. */
    int neededBits() {
        return response.measure.bit() | bits(covariates());
    }

    private static int bits(List<Covariate> covariates) {
        return covariates.stream()
                .mapToInt(covariate -> covariate.measure.bit())
                .reduce(0, (a, b) -> a | b);
    }
}
