package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedRefusal;

/** Says why there is no answer, with figures and what would help. */
final class HumidityRefusal {

    private final HumidityPool pool;
    private final HumidityQuestion question;
    private final Parameters parameters;
    private final List<String> references;

    HumidityRefusal(HumidityPool pool, HumidityQuestion question, Parameters parameters, List<String> references) {
        this.pool = pool;
        this.question = question;
        this.parameters = parameters;
        this.references = references;
    }

    Declined withoutUsableTrials() {
        if (pool.shots.isEmpty()) {
            return declined(Reason.TOO_FEW_RECORDS, "There are no trials: give sessions with trials.");
        }
        if (!pool.shot.isEmpty() && !pool.shots.has(pool.shot)) {
            return declined(WhyNot.unknownShot("No trial", pool.shot, pool.shots));
        }
        String which = pool.shot.isEmpty() ? "" : " of shot " + pool.shot;
        if (pool.withoutClimate > 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    Figures.counted(pool.withoutClimate, "trial") + which + " with "
                            + question.response().parameter
                            + ", none with humidity and temperature: log the climate, or state it on the session.");
        }
        if (pool.withoutTrait > 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "The sessions of all " + Figures.counted(pool.withoutTrait, "trial") + which
                            + " leave unsaid, or put beyond its formulas, what the " + question.measure().noun
                            + " or a covariate needs: state cloth, bed and dates, or ask for another.");
        }
        if (pool.withoutCovariate > 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "None of " + Figures.counted(pool.withoutCovariate, "trial") + which
                            + " has all covariates that were asked for: ask for fewer.");
        }
        return declined(
                Reason.NOT_APPLICABLE,
                "None of " + Figures.counted(pool.withoutResponse, "trial") + which + " has "
                        + question.response().parameter + ": choose another response or shot.");
    }

    Declined of(NestedRefusal refused) {
        return declined(WhyNot.of(refused));
    }

    /** Why a fit that exists must not be reported; empty when it may. */
    Optional<Declined> ofUnsound(NestedFit fit) {
        int all = question.columns().climate();
        long climate =
                all - fit.dropped().stream().filter(column -> column < all).count();
        Optional<WhyNot> same = Optional.of(WhyNot.sameHumidity(pool.lowestPct(), pool.usedTrials))
                .filter(none -> fit.coefficient(1).isEmpty());
        return same.or(() -> WhyNot.fewSessions(pool.usedSessions, climate, all, "."))
                .or(() -> WhyNot.ofUnsound(fit))
                .map(this::declined);
    }

    Declined withoutKenwardRoger() {
        return declined(
                Reason.NOT_CONVERGED,
                "Kenward and Roger's adjusted covariance is none with so few rooms and sessions: set df_method ="
                        + " satterthwaite.");
    }

    private Declined declined(WhyNot why) {
        return why.declined(parameters, HumidityWarnings.ofPool(pool, question), references);
    }

    private Declined declined(Reason reason, String detail) {
        return declined(new WhyNot(reason, detail));
    }
}
