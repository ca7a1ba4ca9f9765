package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.Response;

/**
 * The parameters of {@link Repeatability}, read.
 *
 * @param shot empty: the one with the most usable trials
 * @param response what is compared
 * @param fromPct where the band of humidity begins, %RH; empty: where most rooms can be compared
 * @param toPct where it ends, %RH; empty likewise
 * @param all whether all sessions of a room in the band are its results, or the one nearest the middle
 */
record AgreementQuestion(
        Optional<String> shot, Response response, Optional<Double> fromPct, Optional<Double> toPct, boolean all) {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String FROM = "from_pct";
    static final String TO = "to_pct";
    static final String SESSIONS = "sessions";
    static final String ONE = "one";
    static final String ALL = "all";

    /**
     * Reads them.
     *
     * @throws IllegalArgumentException for a value that cannot be; the message holds name, value, bound and remedy
     */
    static AgreementQuestion of(Parameters parameters) {
        Optional<Double> from = humidity(parameters, FROM);
        Optional<Double> to = humidity(parameters, TO);
        if (from.isPresent() && to.isPresent() && !(from.get() < to.get())) {
            throw new IllegalArgumentException("parameter " + FROM + " = " + Figures.plain(from.get())
                    + " is not below " + TO + " = " + Figures.plain(to.get()) + ": set a lower one");
        }
        return new AgreementQuestion(
                parameters.text(SHOT),
                Response.of(parameters.text(RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter)),
                from,
                to,
                parameters.text(SESSIONS).orElse(ONE).equals(ALL));
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
}
