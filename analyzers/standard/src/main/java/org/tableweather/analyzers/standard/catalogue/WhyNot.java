package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;
import org.tableweather.analyzers.standard.statistics.NestedRefusal;

/**
 * Why a pool has no answer.
 *
 * @param reason its kind
 * @param detail with figures and what would help
 */
public record WhyNot(Reason reason, String detail) {

    /**
     * No trial cites the shot.
     *
     * @param none names the trials there are none of: {@code No trial}
     */
    public static WhyNot unknownShot(String none, String shot, ShotCounts counts) {
        return new WhyNot(
                Reason.NOT_APPLICABLE,
                none + " cites shot " + shot + ": the shots here are " + Figures.listed(counts.all()) + ".");
    }

    /** The pooled model was not fitted. */
    public static WhyNot of(NestedRefusal refused) {
        return refused.cause() == NestedRefusal.Cause.EXACT_FIT
                ? new WhyNot(
                        Reason.DEGENERATE,
                        "The model reproduces the response to rounding (" + refused.detail()
                                + "): check that the outcomes are measured, not computed.")
                : new WhyNot(Reason.TOO_FEW_RECORDS, "Too few trials (" + refused.detail() + "): add trials.");
    }

    /** Humidity does not vary in these trials. */
    public static WhyNot sameHumidity(double rhPct, long trials) {
        return new WhyNot(
                Reason.DEGENERATE,
                "Humidity is the same, " + Figures.fixed(rhPct, 1) + " %RH, in all " + Figures.counted(trials, "trial")
                        + ": add sessions at another humidity.");
    }

    /**
     * No more sessions than coefficients of the climate; empty where there are more.
     *
     * @param coefficients that these sessions tell apart
     * @param all that the model has where sessions differ in humidity and temperature
     * @param remedy follows what is needed
     */
    public static Optional<WhyNot> fewSessions(long sessions, long coefficients, long all, String remedy) {
        String more = all > coefficients ? ", " + (all + 1) + " where temperature differs too" : "";
        return Optional.of(new WhyNot(
                        Reason.TOO_FEW_RECORDS,
                        Figures.counted(sessions, "session") + " for " + coefficients
                                + " coefficients of the climate: sessions are held climates, so at least "
                                + (coefficients + 1) + " are needed, best at different humidities" + more + remedy))
                .filter(few -> sessions <= coefficients);
    }

    /** A fit that tells nothing apart, or did not settle; empty for a sound one. */
    public static Optional<WhyNot> ofUnsound(NestedFit fit) {
        if (fit.cautions().contains(Caution.ROOM_IN_RESIDUAL)) {
            return Optional.of(
                    new WhyNot(
                            Reason.TOO_FEW_RECORDS,
                            "Each of " + Figures.counted(fit.rooms().size(), "room")
                                    + " has one usable trial: room, session and trial scatter cannot be told apart; add trials."));
        }
        return Optional.of(new WhyNot(
                        Reason.NOT_CONVERGED,
                        "The search for the optimum did not settle in " + fit.evaluations() + " evaluations."))
                .filter(unsettled -> fit.cautions().contains(Caution.NOT_CONVERGED));
    }

    /** In place of an answer. */
    public Declined declined(Parameters parameters, List<String> warnings, List<String> references) {
        return new Declined(reason, detail, parameters.values(), warnings, references);
    }
}
