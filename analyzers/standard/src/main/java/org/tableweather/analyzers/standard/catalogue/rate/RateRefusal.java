package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.catalogue.WhyNot;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/** Says why there is no answer, with figures and what would help. */
final class RateRefusal {

    private static final Map<Cause, Reason> REASONS = new EnumMap<>(Map.of(
            Cause.TOO_FEW, Reason.TOO_FEW_RECORDS,
            Cause.NO_VARIATION, Reason.DEGENERATE,
            Cause.COLLINEAR, Reason.DEGENERATE,
            Cause.SEPARATION, Reason.DEGENERATE,
            Cause.ERROR_SWAMPS, Reason.DEGENERATE,
            Cause.NOT_CONVERGED, Reason.NOT_CONVERGED));

    private final RatePool pool;
    private final RateQuestion question;
    private final Parameters parameters;
    private final List<String> references;

    RateRefusal(RatePool pool, RateQuestion question, Parameters parameters, List<String> references) {
        this.pool = pool;
        this.question = question;
        this.parameters = parameters;
        this.references = references;
    }

    /** Why the pool cannot be asked at all; empty when it can. */
    Optional<Declined> ofPool() {
        if (pool.shots.isEmpty()) {
            return decline(Reason.TOO_FEW_RECORDS, "There are no trials: give sessions with attempts made and missed.");
        }
        if (!pool.shot.isEmpty() && !pool.shots.has(pool.shot)) {
            WhyNot unknown = WhyNot.unknownShot("No trial", pool.shot, pool.shots);
            return decline(unknown.reason(), unknown.detail());
        }
        if (pool.sessions.isEmpty()) {
            return decline(Reason.NOT_APPLICABLE, unusable());
        }
        return alike();
    }

    private Optional<Declined> alike() {
        if (pool.made() == 0 || pool.made() == pool.tried()) {
            return decline(
                    Reason.DEGENERATE,
                    (pool.made() == 0 ? "None" : "All") + " of " + Figures.counted(pool.tried(), "attempt")
                            + " of shot "
                            + pool.shot + " went in: nothing changes that the climate could explain; shoot a "
                            + (pool.made() == 0 ? "smaller" : "wider") + " angle or distance, or add the "
                            + (pool.made() == 0 ? "made" : "missed") + " attempts that were not logged.");
        }
        if (pool.rooms() < 2) {
            return decline(
                    Reason.TOO_FEW_RECORDS,
                    "One room: how rooms differ cannot be seen; add sessions of at least one other room.");
        }
        int columns = question.withoutTemperature().coefficients();
        return Optional.of(tooFew(columns)).filter(none -> pool.sessions.size() <= columns);
    }

    private String unusable() {
        String which = pool.shot.isEmpty() ? "" : " of shot " + pool.shot;
        if (pool.withoutClimate > 0) {
            return Figures.counted(pool.withoutClimate, "attempt") + which
                    + " made or missed, none with humidity and temperature: log the climate, or state it on the session.";
        }
        return "None of " + Figures.counted(pool.notStated, "trial") + which
                + " states whether it was made or missed: fill in the column made for every attempt.";
    }

    private Declined tooFew(int columns) {
        return declined(
                Reason.TOO_FEW_RECORDS,
                Figures.counted(pool.sessions.size(), "session") + " for " + columns
                        + " coefficients: sessions are held climates, so at least " + (columns + 1)
                        + " are needed, best at different humidities.");
    }

    /** Why the model has no answer. */
    Declined of(Refusal refusal) {
        String detail =
                switch (refusal.cause()) {
                    case COLLINEAR ->
                        "Humidity does not vary enough over "
                                + Figures.counted(pool.tried(), "attempt") + (question.bent() ? " for a bend" : "")
                                + ": add sessions at another humidity.";
                    case SEPARATION ->
                        "All attempts beyond some climate went in and all others missed: the odds have no"
                                + " finite slope; add attempts in between.";
                    case TOO_FEW -> "Too few attempts (" + refusal.detail() + "): add attempts.";
                    default -> "The odds cannot be fitted (" + refusal.detail() + "): add sessions.";
                };
        return declined(REASONS.get(refusal.cause()), detail);
    }

    private Optional<Declined> decline(Reason reason, String detail) {
        return Optional.of(declined(reason, detail));
    }

    private Declined declined(Reason reason, String detail) {
        return new Declined(reason, detail, parameters.values(), RateWarnings.ofPool(pool, question), references);
    }
}
