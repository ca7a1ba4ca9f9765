package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.AskedRange;
import org.tableweather.analyzers.standard.catalogue.Response;

/**
 * The parameters of {@link Repeatability}, read.
 *
 * @param shot empty: the one with the most usable trials
 * @param response what is compared
 * @param band of humidity; empty: where most rooms can be compared
 * @param all whether all sessions of a room in the band are its results, or the one nearest the middle
 */
record AgreementQuestion(Optional<String> shot, Response response, AskedRange band, boolean all) {

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
        return new AgreementQuestion(
                parameters.text(SHOT),
                Response.of(parameters.text(RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter)),
                AskedRange.of(parameters, FROM, TO),
                parameters.text(SESSIONS).orElse(ONE).equals(ALL));
    }
}
