package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.catalogue.kind.KindSummary.Block;
import org.tableweather.analyzers.standard.catalogue.kind.KindSummary.Part;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's trials of one kind by shot and pattern. */
final class KindSummariser {

    private final SessionRecord session;
    private final List<Reading> columns;
    private final double[] row;
    private final SortedMap<String, SortedMap<Integer, MomentsBuilder>> shots = new TreeMap<>();

    private KindSummariser(SessionRecord session, List<Reading> columns) {
        this.session = session;
        this.columns = columns;
        row = new double[columns.size()];
    }

    /** The summary of trials in any order: equal trials give equal bits. */
    static KindSummary of(KindDefinition definition, SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        CorrectedClimate.of(session).of(trials).forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        KindSummariser summariser = new KindSummariser(session, definition.columns());
        ordered.stream().filter(trial -> trial.kind() == definition.kind()).forEach(summariser::add);
        return new KindSummary(
                summariser.parts(),
                new SessionProtocolBuilder(outcomes(definition, session)).ofOrdered(session.session(), ordered));
    }

    private static Map<String, ToDoubleFunction<Trial>> outcomes(KindDefinition definition, SessionRecord session) {
        Map<String, ToDoubleFunction<Trial>> outcomes = new HashMap<>();
        definition
                .outcomes()
                .forEach(outcome -> outcomes.put(
                        outcome.parameter(),
                        trial -> trial.kind() == definition.kind()
                                ? outcome.reading().bounded(session, trial)
                                : Double.NaN));
        return outcomes;
    }

    private void add(Trial trial) {
        int measured = 0;
        int filled = 0;
        for (int column = 0; column < columns.size(); column++) {
            double number = columns.get(column).bounded(session, trial);
            if (!Double.isNaN(number)) {
                measured |= 1 << column;
                row[filled++] = number;
            }
        }
        SortedMap<Integer, MomentsBuilder> blocks = shots.computeIfAbsent(trial.shot(), shot -> new TreeMap<>());
        MomentsBuilder block = blocks.get(measured);
        if (block == null) {
            block = new MomentsBuilder(filled);
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
