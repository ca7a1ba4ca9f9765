package org.tableweather.analyzers.standard.catalogue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's trials by shot and pattern. */
public final class SessionMomentsBuilder {

    private static final Measure[] MEASURES = Measure.values();
    private static final SessionProtocolBuilder PROTOCOL = new SessionProtocolBuilder(responses());

    private SessionMomentsBuilder() {}

    /**
     * The summary of a session, its climates corrected by its instrument's calibration, its trials in any order: equal trials give
     * equal bits.
     */
    public static SessionMoments of(SessionRecord session, Iterable<Trial> trials) {
        CorrectedClimate climate = CorrectedClimate.of(session);
        List<Trial> ordered = climate.ordered(trials);
        return of(SessionTraits.of(session, climate), PROTOCOL.ofOrdered(session.session(), ordered), ordered);
    }

    /** The same of trials of which nothing else is known. */
    public static SessionMoments of(Iterable<Trial> trials) {
        List<Trial> ordered = CorrectedClimate.NONE.ordered(trials);
        return of(SessionTraits.UNKNOWN, PROTOCOL.ofOrdered(ordered), ordered);
    }

    private static SessionMoments of(SessionTraits traits, SessionProtocol protocol, List<Trial> ordered) {
        PartsBuilder builder = new PartsBuilder(MEASURES.length);
        for (Trial trial : ordered) {
            for (Measure measure : MEASURES) {
                builder.column(measure.bit(), measure.of(trial));
            }
            builder.trialOf(trial.shot());
        }
        return new SessionMoments(builder.parts(), traits, protocol);
    }

    private static Map<String, ToDoubleFunction<Trial>> responses() {
        Map<String, ToDoubleFunction<Trial>> responses = new HashMap<>();
        for (Response response : Response.values()) {
            responses.put(response.parameter, response.measure::of);
        }
        return responses;
    }
}
