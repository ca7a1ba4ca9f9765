package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;

/**
 * The parameters of {@link ReboundHumidity}, read.
 *
 * @param shot empty: the shot with the most usable trials
 * @param response what is explained
 * @param columns of the model: humidity measure, shape of the curve, covariates
 * @param kenwardRoger whether contrasts are judged by Kenward and Roger's method
 * @param range of the curve
 * @param subgroup what parts the sessions; empty: nothing
 * @param bootstrap number of replicates of the parametric bootstrap, 0 for none
 * @param seed of all that is drawn
 */
record HumidityQuestion(
        Optional<String> shot,
        Response response,
        HumidityColumns columns,
        boolean kenwardRoger,
        AskedRange range,
        Optional<Subgrouping> subgroup,
        int bootstrap,
        long seed) {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String MEASURE = "humidity_measure";
    static final String CURVE = "curve";
    static final String COVARIATES = "covariates";
    static final String DF_METHOD = "df_method";
    static final String SUBGROUP = "subgroup";
    static final String BOOTSTRAP = "bootstrap";
    static final String SEED = "seed";

    static final String QUADRATIC = "quadratic";
    static final String SPLINE = "spline";
    static final String SATTERTHWAITE = "satterthwaite";
    static final String KENWARD_ROGER = "kenward-roger";
    static final String NO_SUBGROUP = "none";

    private static final int MOST_REPLICATES = 10_000;
    private static final long LARGEST_SEED = 1L << 53;

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static HumidityQuestion of(Parameters parameters) {
        boolean curved = parameters.text(CURVE).orElse(QUADRATIC).equals(SPLINE);
        boolean kenwardRoger = parameters.text(DF_METHOD).orElse(SATTERTHWAITE).equals(KENWARD_ROGER);
        if (curved && kenwardRoger) {
            throw new IllegalArgumentException("parameter " + DF_METHOD + " = " + KENWARD_ROGER + " is not defined for "
                    + CURVE + " = " + SPLINE + ": set " + SATTERTHWAITE + " or " + QUADRATIC);
        }
        return new HumidityQuestion(
                parameters.text(SHOT),
                Response.of(parameters.text(RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter)),
                new HumidityColumns(
                        HumidityMeasure.of(parameters.text(MEASURE).orElse(HumidityMeasure.RELATIVE.parameter)),
                        curved,
                        Covariate.listed(parameters.text(COVARIATES).orElse(""))),
                kenwardRoger,
                AskedRange.of(parameters),
                parameters
                        .text(SUBGROUP)
                        .filter(name -> !name.equals(NO_SUBGROUP))
                        .map(Subgrouping::of),
                (int) whole(parameters, BOOTSTRAP, 0, MOST_REPLICATES),
                whole(parameters, SEED, 1, LARGEST_SEED));
    }

    private static long whole(Parameters parameters, String name, long standard, long most) {
        double number = parameters.number(name).orElse((double) standard);
        if (number < 0 || number > most || number != Math.rint(number)) {
            throw new IllegalArgumentException("parameter " + name + " = " + Figures.plain(number)
                    + " is not a whole number from 0 to " + most + ": set one");
        }
        return (long) number;
    }

    HumidityMeasure measure() {
        return columns.measure;
    }

    /** Covariates beside the climate. */
    List<Covariate> asked() {
        return columns.asked;
    }
}
