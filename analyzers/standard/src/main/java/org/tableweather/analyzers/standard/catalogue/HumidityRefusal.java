package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.statistics.Caution;
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
        if (pool.trialsByShot.isEmpty()) {
            return declined(Reason.TOO_FEW_RECORDS, "There are no trials: give sessions with trials.");
        }
        if (!pool.shot.isEmpty() && !pool.trialsByShot.containsKey(pool.shot)) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "No trial cites shot " + pool.shot + ": the shots here are "
                            + Figures.listed(new ArrayList<>(pool.trialsByShot.keySet())) + ".");
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
        switch (refused.cause()) {
            case EXACT_FIT:
                return declined(
                        Reason.DEGENERATE,
                        "The model reproduces the response to rounding (" + refused.detail()
                                + "): check that the outcomes are measured, not computed.");
            case NO_DATA:
            case TOO_FEW_ROWS:
            default:
                return declined(Reason.TOO_FEW_RECORDS, "Too few trials (" + refused.detail() + "): add trials.");
        }
    }

    /** Why a fit that exists must not be reported; empty when it may. */
    Optional<Declined> ofUnsound(NestedFit fit) {
        if (fit.coefficient(1).isEmpty()) {
            return Optional.of(declined(
                    Reason.DEGENERATE,
                    "Humidity is the same, " + Figures.fixed(pool.lowestPct(), 1) + " %RH, in all "
                            + Figures.counted(pool.usedTrials, "trial") + ": add sessions at another humidity."));
        }
        long climateColumns = question.columns().climate()
                - fit.dropped().stream()
                        .filter(column -> column < question.columns().climate())
                        .count();
        if (pool.usedSessions <= climateColumns) {
            return Optional.of(declined(
                    Reason.TOO_FEW_RECORDS,
                    Figures.counted(pool.usedSessions, "session") + " for " + climateColumns
                            + " coefficients of the climate: sessions are held climates, so at least "
                            + (climateColumns + 1) + " are needed, best at different humidities."));
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

    Declined withoutKenwardRoger() {
        return declined(
                Reason.NOT_CONVERGED,
                "Kenward and Roger's adjusted covariance is none with so few rooms and sessions: set df_method ="
                        + " satterthwaite.");
    }

    private Declined declined(Reason reason, String detail) {
        return new Declined(reason, detail, parameters.values(), HumidityWarnings.ofPool(pool, question), references);
    }
}
