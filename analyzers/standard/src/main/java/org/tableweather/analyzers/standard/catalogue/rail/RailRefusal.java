package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Parameters;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.answer.Refusal;

/** Says why there is no answer, with figures and what would help. */
final class RailRefusal {

    private static final String REMEDY =
            "measure rebound_speed_mps and approach_speed_mps, or shoot at approach angles as far"
                    + " apart as 30° and 60°";

    private final RailPool pool;
    private final Parameters parameters;
    private final List<String> references;

    RailRefusal(RailPool pool, Parameters parameters, List<String> references) {
        this.pool = pool;
        this.parameters = parameters;
        this.references = references;
    }

    Optional<Declined> ofPool() {
        if (!pool.used.isEmpty()) {
            return Optional.empty();
        }
        if (pool.trials == 0) {
            return declined(Reason.TOO_FEW_RECORDS, "There are no trials: give sessions with trials.");
        }
        if (!pool.pairsByShot.isEmpty() && pool.withoutMeasure == 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "No pair of approach and rebound is of shot "
                            + pool.question.shot().orElse("") + ": the shots with" + " pairs are "
                            + Figures.listed(new ArrayList<>(pool.pairsByShot.keySet())) + ".");
        }
        if (pool.withoutMeasure > 0) {
            return declined(
                    Reason.NOT_APPLICABLE,
                    "None of " + Figures.counted(pool.withoutMeasure, "pair") + " has "
                            + pool.question.measure().noun
                            + ": choose another humidity_measure, or state what it needs.");
        }
        return declined(
                Reason.NOT_APPLICABLE,
                "Of " + Figures.counted(pool.trials, "trial") + ", " + pool.withoutPair
                        + " lack an approach_angle_deg or rebound_angle_deg up to 85°, " + pool.withoutClimate
                        + " humidity or temperature, " + pool.withSideSpin
                        + " state side spin: measure both angles at one rail, with the climate.");
    }

    Optional<Declined> ofDesign(RailDesign design) {
        if (pool.rooms.size() < 2) {
            return declined(
                    Reason.TOO_FEW_RECORDS,
                    "One room: how rooms differ is unknown, so a rail fitted here says nothing of others; add rooms.");
        }
        if (pool.sessions.size() <= design.terms.size()) {
            return declined(
                    Reason.TOO_FEW_RECORDS,
                    Figures.counted(pool.sessions.size(), "session") + " for " + design.terms.size()
                            + " coefficients: sessions are held climates, so at least " + (design.terms.size() + 1)
                            + " are needed, best at different humidities.");
        }
        if (!design.humidityVaries()) {
            return declined(
                    Reason.DEGENERATE,
                    "Humidity hardly varies, " + Figures.fixed(pool.lowestPct(), 1) + " to "
                            + Figures.fixed(pool.highestPct(), 1) + " %RH: add sessions at another humidity.");
        }
        return Optional.empty();
    }

    /** Why no rail was fitted. */
    Declined of(Refusal refusal) {
        return switch (refusal.cause()) {
            case COLLINEAR ->
                make(
                        Reason.DEGENERATE,
                        "These " + Figures.counted(pool.pairs, "pair")
                                + " do not tell restitution from friction: an angle is" + " one number; " + REMEDY
                                + ".");
            case NO_VARIATION ->
                make(
                        Reason.DEGENERATE,
                        "The scatter of attempts is unknown: " + refusal.detail()
                                + "; repeat attempts within a session.");
            default -> make(Reason.NOT_CONVERGED, "The fit did not settle: " + refusal.detail() + ".");
        };
    }

    /** Why a fitted rail must not be told: its levels rest on next to nothing. */
    Optional<Declined> ofUntold(FittedRail rail) {
        double restitution = rail.error(RailTerm.RESTITUTION);
        double friction = rail.error(RailTerm.FRICTION);
        if (restitution < RailTerm.RESTITUTION.typical && friction < RailTerm.FRICTION.typical) {
            return Optional.empty();
        }
        return declined(
                Reason.DEGENERATE,
                "These " + Figures.counted(pool.pairs, "pair") + (pool.withRatio() ? "" : " of angles alone")
                        + " leave restitution uncertain by " + Figures.fixed(restitution, 2) + " and friction by "
                        + Figures.fixed(100 * friction, 0)
                        + " % (standard errors): what changes in the rail cannot be told apart; " + REMEDY + ".");
    }

    private Optional<Declined> declined(Reason reason, String detail) {
        return Optional.of(make(reason, detail));
    }

    private Declined make(Reason reason, String detail) {
        return new Declined(reason, detail, parameters.values(), RailWarnings.ofPool(pool), references);
    }
}
