package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.standard.catalogue.PartsBuilder;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's trials of one kind by shot and pattern. */
final class KindSummariser {

    private KindSummariser() {}

    /** The summary of trials in any order: equal trials give equal bits. */
    static KindSummary of(KindDefinition definition, SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = CorrectedClimate.of(session).ordered(trials);
        List<Reading> columns = definition.columns();
        PartsBuilder builder = new PartsBuilder(columns.size());
        for (Trial trial : ordered) {
            if (trial.kind() == definition.kind()) {
                for (int column = 0; column < columns.size(); column++) {
                    builder.column(1 << column, columns.get(column).bounded(session, trial));
                }
                builder.trialOf(trial.shot());
            }
        }
        return new KindSummary(
                builder.parts(),
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
}
