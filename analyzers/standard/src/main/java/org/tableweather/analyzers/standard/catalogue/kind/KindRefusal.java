package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.WhyNot;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedRefusal;

/** Says why there is no answer, with figures and what would help. */
final class KindRefusal {

    private final KindPool pool;
    private final KindQuestion question;
    private final Parameters parameters;
    private final List<String> references;

    KindRefusal(KindPool pool, KindQuestion question, Parameters parameters, List<String> references) {
        this.pool = pool;
        this.question = question;
        this.parameters = parameters;
        this.references = references;
    }

    Declined withoutUsableTrials() {
        String kind = question.definition().kind().schemaName();
        if (pool.shots.isEmpty()) {
            return declined(
                    Reason.TOO_FEW_RECORDS,
                    "There are no trials of kind " + kind + ": give sessions with such trials.");
        }
        if (!pool.shot.isEmpty() && !pool.shots.has(pool.shot)) {
            return declined(WhyNot.unknownShot("No trial of kind " + kind, pool.shot, pool.shots));
        }
        String which = pool.shot.isEmpty() ? "" : " of shot " + pool.shot;
        if (pool.withoutClimate > 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    Figures.counted(pool.withoutClimate, "trial") + which + " with " + pool.outcome.parameter()
                            + ", none with humidity and temperature: log the climate, or state it on the session.");
        }
        if (pool.withoutCovariate > 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "None of " + Figures.counted(pool.withoutCovariate, "trial") + which
                            + " has all covariates that were asked for: ask for fewer.");
        }
        return declined(
                Reason.NOT_APPLICABLE,
                "None of " + Figures.counted(pool.withoutOutcome, "trial") + which + " has " + pool.outcome.withNeeds()
                        + ": measure it, or choose another response or shot.");
    }

    /** Why a fit that was refused cannot be had. */
    Declined of(NestedRefusal refused) {
        return declined(WhyNot.of(refused));
    }

    /** Why a fit that exists must not be reported; empty when it may. */
    Optional<Declined> ofUnsound(NestedFit fit) {
        int columns = question.climate().size();
        long climate = 1
                + columns
                - fit.dropped().stream().filter(column -> column <= columns).count();
        String remedy = question.bent() && !fit.dropped().contains(2)
                ? "; a straight line (shape=linear) needs one less."
                : ".";
        Optional<WhyNot> same = Optional.of(WhyNot.sameHumidity(pool.lowestPct(), pool.usedTrials))
                .filter(none -> fit.coefficient(1).isEmpty());
        return same.or(() -> WhyNot.fewSessions(pool.usedSessions, climate, 1 + columns, remedy))
                .or(() -> WhyNot.ofUnsound(fit))
                .map(this::declined);
    }

    private Declined declined(WhyNot why) {
        return why.declined(parameters, KindWarnings.ofPool(pool, question), references);
    }

    private Declined declined(Reason reason, String detail) {
        return declined(new WhyNot(reason, detail));
    }
}
