package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's trials by shot and pattern. */
public final class SessionMomentsBuilder {

    private static final Measure[] MEASURES = Measure.values();

    private final SortedMap<String, SortedMap<Integer, MomentsBuilder>> shots = new TreeMap<>();
    private final double[] row = new double[MEASURES.length];

    private SessionMomentsBuilder() {}

    /** The summary of a session, its trials in any order: equal trials give equal bits. */
    public static SessionMoments of(SessionRecord session, Iterable<Trial> trials) {
        return of(SessionTraits.of(session), trials);
    }

    /** The same of trials of which nothing else is known. */
    public static SessionMoments of(Iterable<Trial> trials) {
        return of(SessionTraits.UNKNOWN, trials);
    }

    private static SessionMoments of(SessionTraits traits, Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        trials.forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        SessionMomentsBuilder builder = new SessionMomentsBuilder();
        ordered.forEach(builder::add);
        return builder.build(traits);
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

    private SessionMoments build(SessionTraits traits) {
        List<Part> parts = new ArrayList<>();
        shots.forEach((shot, patterns) -> {
            List<Block> blocks = new ArrayList<>();
            patterns.forEach((measured, builder) -> blocks.add(new Block(measured, builder.build())));
            parts.add(new Part(shot, blocks));
        });
        return new SessionMoments(parts, traits);
    }
}
