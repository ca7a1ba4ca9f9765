package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocol;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's trials by shot and pattern. */
public final class SessionMomentsBuilder {

    private static final Measure[] MEASURES = Measure.values();
    private static final SessionProtocolBuilder PROTOCOL = new SessionProtocolBuilder(responses());

    private final SortedMap<String, SortedMap<Integer, MomentsBuilder>> shots = new TreeMap<>();
    private final double[] row = new double[MEASURES.length];

    private SessionMomentsBuilder() {}

    /**
     * The summary of a session, its climates corrected by its instrument's calibration, its trials in any order: equal trials give
     * equal bits.
     */
    public static SessionMoments of(SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = ordered(CorrectedClimate.of(session).of(trials));
        return of(SessionTraits.of(session), PROTOCOL.ofOrdered(session.session(), ordered), ordered);
    }

    /** The same of trials of which nothing else is known. */
    public static SessionMoments of(Iterable<Trial> trials) {
        List<Trial> ordered = ordered(trials);
        return of(SessionTraits.UNKNOWN, PROTOCOL.ofOrdered(ordered), ordered);
    }

    private static List<Trial> ordered(Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        trials.forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        return ordered;
    }

    private static SessionMoments of(SessionTraits traits, SessionProtocol protocol, List<Trial> ordered) {
        SessionMomentsBuilder builder = new SessionMomentsBuilder();
        ordered.forEach(builder::add);
        return new SessionMoments(builder.parts(), traits, protocol);
    }

    private static Map<String, ToDoubleFunction<Trial>> responses() {
        Map<String, ToDoubleFunction<Trial>> responses = new HashMap<>();
        for (Response response : Response.values()) {
            responses.put(response.parameter, response.measure::of);
        }
        return responses;
    }

    private void add(Trial trial) {
        int measured = 0;
        int columns = 0;
        for (Measure measure : MEASURES) {
            double number = measure.of(trial);
            if (!Double.isNaN(number)) {
                measured |= measure.bit();
                row[columns++] = number;
            }
        }
        SortedMap<Integer, MomentsBuilder> blocks = shots.computeIfAbsent(trial.shot(), shot -> new TreeMap<>());
        MomentsBuilder block = blocks.get(measured);
        if (block == null) {
            block = new MomentsBuilder(columns);
            blocks.put(measured, block);
        }
        block.add(row);
    }

    private List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        shots.forEach((shot, patterns) -> {
            List<Block> blocks = new ArrayList<>();
            patterns.forEach((measured, builder) -> blocks.add(new Block(measured, builder.build())));
            parts.add(new Part(shot, blocks));
        });
        return parts;
    }
}
