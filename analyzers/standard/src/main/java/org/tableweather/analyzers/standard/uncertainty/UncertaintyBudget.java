package org.tableweather.analyzers.standard.uncertainty;

import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.tableweather.analyzers.standard.numeric.StudentT;

/**
 * A result, its combined standard uncertainty, and what each input has to do with it.
 *
 * @param value the result
 * @param standardUncertainty combined, in the result's unit
 * @param degreesOfFreedom effective; infinite when all inputs' uncertainties are taken as exact; empty when correlations forbid them
 * @param lines one per input, in order
 * @source JCGM100
 */
public record UncertaintyBudget(
        double value, double standardUncertainty, OptionalDouble degreesOfFreedom, List<Line> lines) {

    public UncertaintyBudget {
        lines = List.copyOf(lines);
    }

    /**
     * One input.
     *
     * @param name of the input
     * @param input its estimate and uncertainty
     * @param sensitivity {@code ∂f/∂x}, in the result's unit per the input's
     */
    public record Line(String name, UncertainValue input, double sensitivity) {
        /** What this input alone does to the result: {@code |c| · u}, in the result's unit. */
        public double contribution() {
            return Math.abs(sensitivity) * input.standardUncertainty();
        }
    }

    /**
     * Factor k for a two-sided interval: Student's t, the degrees of freedom taken to a tenth and then cut down to a whole number, as in
     * the Guide's examples.
     *
     * @param level probability that the interval covers, above 0 and below 1: 0.95
     * @throws IllegalStateException if there are no degrees of freedom to state
     */
    public double coverageFactor(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level " + level + " must lie between 0 and 1");
        }
        double freedom = degreesOfFreedom.orElseThrow(() -> new IllegalStateException(
                "correlated inputs of finite degrees of freedom leave no effective degrees of freedom"));
        return Double.isInfinite(freedom)
                ? new NormalDistribution().inverseCumulativeProbability((1 + level) / 2)
                : StudentT.halfWidth(level, Math.floor(Math.rint(10 * freedom) / 10));
    }

    /** Expanded uncertainty {@code U = k · u} for a two-sided interval of this probability. */
    public double expanded(double level) {
        return coverageFactor(level) * standardUncertainty;
    }
}
