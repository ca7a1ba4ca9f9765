package org.tableweather.analyzers.standard.statistics.power;

import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Chance of finding a slope or a change over climates, exactly, for a balanced split-plot plan. The climate is set for a whole
 * session, so session means are its units: more trials shrink only {@code σ²/n} in {@code σ_s² + σ²/n}.
 *
 * <p>Rooms in general: the J slopes are independent with variance {@code τ² + (σ_s² + σ²/n)/S_xx}; t on J − 1. These rooms:
 * variance {@code (σ_s² + σ²/n)/(J S_xx)}; t on J(S − 1) − 1, with S sessions a room.
 *
 * @param design the plan
 * @param scatter assumed
 * @param claim which rooms it speaks for
 * @param alpha chance of a false alarm, two-sided, in (0, 1)
 * @source Kirk2013
 */
public record SplitPlotPower(SplitPlotDesign design, ScatterAssumption scatter, RoomClaim claim, double alpha) {

    private static final double ACCURACY = 1e-13;

    /**
     * Checks the bound.
     *
     * @throws IllegalArgumentException outside it
     */
    public SplitPlotPower {
        if (!(alpha > 0 && alpha < 1)) {
            throw new IllegalArgumentException("alpha must be in (0, 1), got " + alpha);
        }
    }

    /** Rooms in general, 5 %. */
    public static SplitPlotPower of(SplitPlotDesign design, ScatterAssumption scatter) {
        return new SplitPlotPower(design, scatter, RoomClaim.ANY_ROOM, 0.05);
    }

    /** The same for another claim. */
    public SplitPlotPower with(RoomClaim other) {
        return new SplitPlotPower(design, scatter, other, alpha);
    }

    /** The same for another plan. */
    public SplitPlotPower with(SplitPlotDesign other) {
        return new SplitPlotPower(other, scatter, claim, alpha);
    }

    /** The same at another chance of a false alarm. */
    public SplitPlotPower withAlpha(double other) {
        return new SplitPlotPower(design, scatter, claim, other);
    }

    /** Degrees of freedom of the slope's test; 0 or less when the plan has none. */
    public int df() {
        return claim == RoomClaim.ANY_ROOM ? design.rooms() - 1 : design.rooms() * (design.sessionsPerRoom() - 1) - 1;
    }

    /** Standard error of the slope, known scatter. */
    public double standardError() {
        double within = scatter.ofSessionMean(design.trialsPerSession()) / design.spread();
        double between = claim == RoomClaim.ANY_ROOM ? scatter.roomSlopeSd() * scatter.roomSlopeSd() : 0;
        return Math.sqrt((between + within) / design.rooms());
    }

    /**
     * Chance that a true slope is found, {@code P(|T| > t)} with {@code δ = slope / standard error}.
     *
     * @param slope in response units per unit of the climates
     * @return refused when the plan leaves no degrees of freedom
     */
    public Answer<Double> ofSlope(double slope) {
        return df() < 1 ? noFreedom() : Answer.of(chance(slope));
    }

    private double chance(double slope) {
        double bound = new TDistribution(df(), ACCURACY).inverseCumulativeProbability(1 - alpha / 2);
        NoncentralT shifted = new NoncentralT(df(), slope / standardError());
        return shifted.above(bound) + shifted.below(-bound);
    }

    /**
     * The slope that is found with this chance.
     *
     * @param power in (alpha, 1)
     * @return above 0; refused when the plan leaves no degrees of freedom
     */
    public Answer<Double> detectableSlope(double power) {
        requirePower(power);
        if (df() < 1) {
            return noFreedom();
        }
        double high = standardError();
        while (chance(high) < power) {
            high *= 2;
        }
        BrentSolver solver = new BrentSolver(1e-12, high * 1e-14);
        return Answer.of(solver.solve(1000, slope -> chance(slope) - power, 0, high));
    }

    /**
     * The fewest rooms that find a slope with this chance.
     *
     * @param most where to stop looking
     * @return empty when {@code most} rooms are not enough
     */
    public OptionalInt roomsNeeded(double slope, double power, int most) {
        return fewest(rooms -> with(design.withRooms(rooms)).chanceOrNone(slope), power, most);
    }

    /**
     * The fewest times that each climate must be held in each room. Empty may mean never: rooms that differ are not made alike
     * by more sessions.
     *
     * @param most where to stop looking
     */
    public OptionalInt sessionsPerClimateNeeded(double slope, double power, int most) {
        return fewest(times -> with(design.withSessionsPerClimate(times)).chanceOrNone(slope), power, most);
    }

    private double chanceOrNone(double slope) {
        return df() < 1 ? 0 : chance(slope);
    }

    private OptionalInt fewest(IntToDoubleFunction chanceOf, double power, int most) {
        requirePower(power);
        for (int count = 1; count <= most; count++) {
            if (chanceOf.applyAsDouble(count) >= power) {
                return OptionalInt.of(count);
            }
        }
        return OptionalInt.empty();
    }

    /**
     * Chance that the F test of any difference between the climates finds these means, for these rooms:
     * {@code λ = J r Σ(μ − μ̄)² / (σ_s² + σ²/n)} on C − 1 and J(S − 1) − (C − 1), each of C climates held r times.
     *
     * @param means expected response in each climate, in the order of the design's climates
     * @return refused when the plan leaves no degrees of freedom
     * @throws IllegalArgumentException unless there is one mean per climate
     */
    public Answer<Double> ofAnyChange(double... means) {
        int climates = design.climates().length;
        if (means.length != climates) {
            throw new IllegalArgumentException(climates + " climates need as many means, got " + means.length);
        }
        double upper = climates - 1.0;
        double lower = design.rooms() * (design.sessionsPerRoom() - 1.0) - upper;
        if (lower < 1) {
            return noFreedom();
        }
        double lambda = design.rooms()
                * design.sessionsPerClimate()
                * SplitPlotDesign.squares(means)
                / scatter.ofSessionMean(design.trialsPerSession());
        double bound = new FDistribution(upper, lower, ACCURACY).inverseCumulativeProbability(1 - alpha);
        return Answer.of(new NoncentralF(upper, lower, lambda).above(bound));
    }

    private <T> Answer<T> noFreedom() {
        return Answer.refuse(
                Cause.TOO_FEW,
                design.rooms() + " rooms with " + design.sessionsPerRoom()
                        + " sessions leave no degrees of freedom: add rooms, or sessions for a claim about these rooms");
    }

    private void requirePower(double power) {
        if (!(power > alpha && power < 1)) {
            throw new IllegalArgumentException("power must be in (alpha, 1) = (" + alpha + ", 1), got " + power);
        }
    }
}
