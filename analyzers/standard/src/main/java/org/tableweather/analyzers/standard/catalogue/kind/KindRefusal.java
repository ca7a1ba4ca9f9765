package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.Caution;
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
        if (pool.trialsByShot.isEmpty()) {
            return declined(
                    Reason.TOO_FEW_RECORDS,
                    "There are no trials of kind " + kind + ": give sessions with such trials.");
        }
        if (!pool.shot.isEmpty() && !pool.trialsByShot.containsKey(pool.shot)) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "No trial of kind " + kind + " cites shot " + pool.shot + ": the shots here are "
                            + Figures.listed(new ArrayList<>(pool.trialsByShot.keySet())) + ".");
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
        if (refused.cause() == NestedRefusal.Cause.EXACT_FIT) {
            return declined(
                    Reason.DEGENERATE,
                    "The model reproduces the response to rounding (" + refused.detail()
                            + "): check that the outcomes are measured, not computed.");
        }
        return declined(Reason.TOO_FEW_RECORDS, "Too few trials (" + refused.detail() + "): add trials.");
    }

    /** Why a fit that exists must not be reported; empty when it may. */
    Optional<Declined> ofUnsound(NestedFit fit) {
        if (fit.coefficient(1).isEmpty()) {
            return Optional.of(declined(
                    Reason.DEGENERATE,
                    "Humidity is the same, " + Figures.fixed(pool.lowestPct(), 1) + " %RH, in all "
                            + Figures.counted(pool.usedTrials, "trial") + ": add sessions at another humidity."));
        }
        int columns = question.climate().size();
        long climate = 1
                + columns
                - fit.dropped().stream().filter(column -> column <= columns).count();
        if (pool.usedSessions <= climate) {
            return Optional.of(declined(
                    Reason.TOO_FEW_RECORDS,
                    Figures.counted(pool.usedSessions, "session") + " for " + climate
                            + " coefficients of the climate: sessions are held climates, so at least " + (climate + 1)
                            + " are needed, best at different humidities"
                            + (question.bent() ? "; a straight line (shape=linear) needs one less." : ".")));
        }
        if (fit.cautions().contains(Caution.ROOM_IN_RESIDUAL)) {
            return Optional.of(
                    declined(
                            Reason.TOO_FEW_RECORDS,
                            "Each of " + Figures.counted(pool.rooms.size(), "room")
                                    + " has one usable trial: room, session and trial scatter cannot be told apart; add trials."));
        }
        return Optional.of(Caution.NOT_CONVERGED)
                .filter(fit.cautions()::contains)
                .map(caution -> declined(
                        Reason.NOT_CONVERGED,
                        "The search for the optimum did not settle in " + fit.evaluations() + " evaluations."));
    }

    private Declined declined(Reason reason, String detail) {
        return new Declined(reason, detail, parameters.values(), KindWarnings.ofPool(pool, question), references);
    }
}
