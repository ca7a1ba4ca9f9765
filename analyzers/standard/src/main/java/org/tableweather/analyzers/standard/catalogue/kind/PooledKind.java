package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.spi.SummarySource;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedModel;
import org.tableweather.analyzers.standard.statistics.NestedOutcome;
import org.tableweather.analyzers.standard.statistics.NestedRefusal;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * How an outcome of one kind of trial changes with humidity over all rooms, by the linear mixed model of sessions in rooms:
 *
 * <pre>
 * y = b₀ + b₁ h [+ b₂ h²] + b₃ t [+ covariates] + (u₀ + u₁ h)[room] + w[session] + e,   REML
 * h = (RH − 50 %)/10 %,   t = (T − 21 °C)/5 K
 * </pre>
 *
 * @source Laird1982
 * @source Patterson1971
 * @source Kuznetsova2017
 */
abstract class PooledKind implements Analyzer<KindSummary> {

    private static final NestedModel MODEL = NestedModel.withDefaults().withRandom(0, 1);

    private final KindDefinition definition;
    private final AnalyzerInfo info;

    PooledKind(KindDefinition definition, KindInfo words) {
        this.definition = definition;
        info = words.of(definition);
    }

    @Override
    public final AnalyzerInfo info() {
        return info;
    }

    @Override
    public final Class<KindSummary> summaryType() {
        return KindSummary.class;
    }

    @Override
    public final KindSummary summarise(SessionRecord session, Iterable<Trial> trials) {
        return KindSummariser.of(definition, session, trials);
    }

    @Override
    public final Analysis conclude(SummarySource<KindSummary> summaries, Parameters parameters) {
        KindQuestion asked = KindQuestion.of(definition, parameters);
        List<SessionSummary<KindSummary>> sessions = summaries.sessions();
        KindPool pool = pool(sessions, asked);
        KindQuestion question = asked.about(pool.outcome);
        KindRefusal refusal = new KindRefusal(pool, question, parameters, info.references());
        if (pool.usedTrials == 0) {
            return refusal.withoutUsableTrials();
        }
        NestedOutcome outcome = MODEL.fit(pool.rooms);
        if (outcome instanceof NestedRefusal refused) {
            return refusal.of(refused);
        }
        NestedFit fit = (NestedFit) outcome;
        Optional<Analysis> declined = refusal.ofUnsound(fit).map(none -> none);
        return declined.orElseGet(() -> {
            KindAnswer answer = new KindAnswer(pool, question, fit);
            return answer.write(
                    beside(sessions, answer.sameCurve(), pool.outcome), chosen(asked, pool), info.references());
        });
    }

    /** Of the outcome asked for, or else of the first that some trial can be used for, or else of the first. */
    private KindPool pool(List<SessionSummary<KindSummary>> sessions, KindQuestion asked) {
        if (asked.outcome().isPresent()) {
            return new KindPool(sessions, asked);
        }
        List<KindPool> pools = definition.outcomes().stream()
                .map(outcome -> new KindPool(sessions, asked.about(outcome)))
                .toList();
        return pools.stream().filter(pool -> pool.usedTrials > 0).findFirst().orElse(pools.get(0));
    }

    /** Says when an outcome other than the preferred one was taken. */
    private List<String> chosen(KindQuestion asked, KindPool pool) {
        Outcome preferred = definition.outcomes().get(0);
        if (asked.outcome().isPresent() || pool.outcome.equals(preferred)) {
            return List.of();
        }
        return List.of(
                "The answer is for " + pool.outcome.parameter() + ": no trial has " + preferred.withNeeds() + ".");
    }

    private List<Estimate> beside(List<SessionSummary<KindSummary>> sessions, KindQuestion same, Outcome main) {
        List<Estimate> beside = new ArrayList<>();
        for (Outcome outcome : definition.beside()) {
            KindQuestion question = same.about(outcome);
            KindPool pool = new KindPool(sessions, question);
            if (!outcome.equals(main) && pool.usedTrials > 0) {
                fit(pool, question).ifPresent(fit -> beside.add(new KindAnswer(pool, question, fit).besideAnother()));
            }
        }
        return beside;
    }

    private Optional<NestedFit> fit(KindPool pool, KindQuestion question) {
        KindRefusal refusal = new KindRefusal(pool, question, new Parameters(new TreeMap<>()), info.references());
        return MODEL.fit(pool.rooms) instanceof NestedFit fit
                        && refusal.ofUnsound(fit).isEmpty()
                ? Optional.of(fit)
                : Optional.empty();
    }
}
