package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Measure;
import org.tableweather.analyzers.standard.catalogue.Response;
import org.tableweather.analyzers.standard.statistics.meta.HeterogeneityMethod;
import org.tableweather.analyzers.standard.statistics.meta.MetaAnalysis;

/**
 * The parameters of {@link RoomSlopes}, read.
 *
 * @param shot empty: the one with the most usable trials
 * @param response what is explained
 * @param method of τ²: REML, PM, DL
 * @param shared whether all rooms share the scatter of sessions and trials
 * @param adjusted whether temperature and bend of the pooled model are taken off first
 */
record SlopeQuestion(Optional<String> shot, Response response, String method, boolean shared, boolean adjusted) {

    static final String SHOT = "shot";
    static final String RESPONSE = "response";
    static final String METHOD = "method";
    static final String SCATTER = "scatter";
    static final String ADJUST = "adjust";

    static final String REML = "REML";
    static final String PAULE_MANDEL = "PM";
    static final String DERSIMONIAN_LAIRD = "DL";
    static final String SHARED = "shared";
    static final String OWN = "own";
    static final String POOLED = "pooled";
    static final String NONE = "none";

    static SlopeQuestion of(Parameters parameters) {
        return new SlopeQuestion(
                parameters.text(SHOT),
                Response.of(parameters.text(RESPONSE).orElse(Response.FINAL_REBOUND_ANGLE.parameter)),
                parameters.text(METHOD).orElse(REML),
                parameters.text(SCATTER).orElse(SHARED).equals(SHARED),
                parameters.text(ADJUST).orElse(POOLED).equals(POOLED));
    }

    MetaAnalysis analysis() {
        HeterogeneityMethod estimator =
                switch (method) {
                    case PAULE_MANDEL -> HeterogeneityMethod.PAULE_MANDEL;
                    case DERSIMONIAN_LAIRD -> HeterogeneityMethod.DERSIMONIAN_LAIRD;
                    default -> HeterogeneityMethod.REML;
                };
        return MetaAnalysis.withDefaults().with(estimator);
    }

    /** Columns before the response; temperature is asked of a trial only where it is adjusted for. */
    List<Measure> climate() {
        return adjusted ? RoomModel.CLIMATE : List.of(Measure.HUMIDITY);
    }

    /** As used. */
    Map<String, String> values(String chosenShot) {
        Map<String, String> used = new LinkedHashMap<>();
        used.put(SHOT, chosenShot);
        used.put(RESPONSE, response.parameter);
        used.put(METHOD, method);
        used.put(SCATTER, shared ? SHARED : OWN);
        used.put(ADJUST, adjusted ? POOLED : NONE);
        return used;
    }
}
