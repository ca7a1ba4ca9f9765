package org.tableweather.analyzers.standard.plan;

import java.util.Optional;
import java.util.OptionalInt;
import org.tableweather.analyzers.standard.statistics.power.RoomClaim;
import org.tableweather.analyzers.standard.statistics.power.ScatterAssumption;
import org.tableweather.analyzers.standard.statistics.power.SplitPlotPower;

/**
 * How sure a plan can be of a change over its climates, for one shot, by the exact noncentral t of a split-plot test.
 *
 * <p>The response is taken to change in a straight line, so that a change from the driest climate to the dampest is a slope; scatter is
 * taken as known and normal. Two-sided test at 5 %.
 *
 * @param claim which rooms the test speaks for
 * @param df degrees of freedom of the test
 * @param standardError of the change from the driest climate to the dampest, in the response's unit
 * @param chance to find the change of interest, 0 to 1
 * @param detectableChange the change that is found with the wanted chance, in the response's unit
 * @param visitsNeeded fewest visits for the wanted chance with as many rooms; empty when no number up to 100 is enough
 * @param roomsNeeded fewest rooms for the wanted chance with as many visits; empty when no number up to 10,000 is enough
 * @source Kirk2013
 */
public record PlanChance(
        RoomClaim claim,
        int df,
        double standardError,
        double chance,
        double detectableChange,
        OptionalInt visitsNeeded,
        OptionalInt roomsNeeded) {

    private static final int MOST_VISITS = 100;
    private static final int MOST_ROOMS = 10_000;

    /**
     * Computes it.
     *
     * @param plan the plan
     * @param scatter in the response's unit, the room slope's per 10 %RH
     * @param change of interest from the driest climate to the dampest, in the response's unit, not 0
     * @param wanted chance to find it, above 0.05 and below 1
     * @param claim which rooms it speaks for
     * @return empty when the plan leaves no degrees of freedom for that claim
     */
    public static Optional<PlanChance> of(
            StudyPlan plan, ScatterAssumption scatter, double change, double wanted, RoomClaim claim) {
        if (!(Math.abs(change) > 0) || !Double.isFinite(change)) {
            throw new IllegalArgumentException("change " + change + " must not be 0: say what is worth finding");
        }
        SplitPlotPower power = SplitPlotPower.of(plan.design(), scatter).with(claim);
        if (power.df() < 1) {
            return Optional.empty();
        }
        double tens = plan.rangePct() / 10;
        double slope = Math.abs(change) / tens;
        return Optional.of(new PlanChance(
                claim,
                power.df(),
                power.standardError() * tens,
                power.ofSlope(slope).orThrow(),
                power.detectableSlope(wanted).orThrow() * tens,
                power.sessionsPerClimateNeeded(slope, wanted, MOST_VISITS),
                power.roomsNeeded(slope, wanted, MOST_ROOMS)));
    }
}
