package org.tableweather.analyzers.standard.catalogue.settling;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.distribution.continuous.FDistribution;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.decay.DecayFit;

/** Says why no time constant can be told, with figures and what would help. */
final class SettlingRefusal {

    private static final double LEVEL = 0.05;

    private final SettlingPool pool;
    private final Map<String, String> parameters;
    private final List<String> references;

    SettlingRefusal(SettlingPool pool, Map<String, String> parameters, List<String> references) {
        this.pool = pool;
        this.parameters = parameters;
        this.references = references;
    }

    /** Empty when there are steps to work on. */
    Optional<Declined> ofPool() {
        if (pool.trials == 0) {
            return declined(Reason.TOO_FEW_RECORDS, "There are no trials: give sessions with trials.");
        }
        if (pool.timed == 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "None of " + Figures.counted(pool.trials, "trial")
                            + " has both its own started_at and a session that says since when its climate was held"
                            + " (settledFrom): state both.");
        }
        if (pool.steps.isEmpty() && pool.shortSteps == 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "No timed trial" + (pool.shot.isEmpty() ? "" : " of shot " + pool.shot) + " has "
                            + pool.outcome.parameter + ": choose another response or shot.");
        }
        if (pool.steps.isEmpty()) {
            return declined(
                    Reason.TOO_FEW_RECORDS,
                    Figures.counted(pool.shortSteps, "step") + " of the climate with " + pool.outcome.parameter
                            + " at fewer than 3 times: follow a step with attempts at 3 times at least, best from its first"
                            + " hour on.");
        }
        return Optional.empty();
    }

    /** Why least squares gave nothing. */
    Declined of(Refusal refusal) {
        return refusal.cause() == Refusal.Cause.TOO_FEW
                ? new Declined(Reason.TOO_FEW_RECORDS, tooFew(), parameters, warnings(), references)
                : new Declined(Reason.DEGENERATE, sentence(refusal.detail()), parameters, warnings(), references);
    }

    private String tooFew() {
        return Figures.counted(pool.used(), "attempt") + " after " + Figures.counted(pool.steps.size(), "step")
                + " of the climate for " + (2 * pool.steps.size() + 1)
                + " figures, a settled value and a change for each step and the time constant: add attempts at other times.";
    }

    private static String sentence(String detail) {
        return Character.toUpperCase(detail.charAt(0)) + detail.substring(1) + ".";
    }

    /** Why a fit says nothing of how long it takes; empty when it does. */
    Optional<Declined> of(DecayFit fit) {
        double f = fit.approachF();
        double chance = 1 - new FDistribution(fit.approachDf(), fit.residualDf()).cumulativeProbability(f);
        if (chance > LEVEL) {
            return declined(
                    Reason.DEGENERATE,
                    "After " + Figures.counted(pool.steps.size(), "step") + " of the climate the " + pool.outcome.noun
                            + " does not change with time more than its scatter (F = " + Figures.fixed(f, 2)
                            + ", chance " + Figures.fixed(chance, 2)
                            + "): it had settled before the first attempt, or needs more attempts or a larger step.");
        }
        if (Double.isInfinite(fit.profile().upper())) {
            return declined(
                    Reason.DEGENERATE,
                    "The " + pool.outcome.noun + " still changed at the end: the time constant is at least "
                            + Figures.fixed(fit.profile().lower(), 2)
                            + " h, no upper bound can be told; go on for longer.");
        }
        if (fit.profile().lower() == 0) {
            return declined(
                    Reason.DEGENERATE,
                    "The " + pool.outcome.noun
                            + " had settled between the first attempts: the time constant is at most "
                            + Figures.fixed(fit.profile().upper(), 2) + " h; shoot sooner after the step.");
        }
        return Optional.empty();
    }

    List<String> warnings() {
        return SettlingWarnings.ofPool(pool);
    }

    private Optional<Declined> declined(Reason reason, String detail) {
        return Optional.of(new Declined(reason, detail, parameters, warnings(), references));
    }
}
