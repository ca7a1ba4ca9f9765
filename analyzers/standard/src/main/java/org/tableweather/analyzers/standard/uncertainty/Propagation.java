package org.tableweather.analyzers.standard.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Law of propagation of uncertainty: {@code u²(y) = Σᵢ Σⱼ cᵢ cⱼ u(xᵢ) u(xⱼ) r(xᵢ, xⱼ)}, {@code cᵢ = ∂f/∂xᵢ}.
 *
 * <p>Effective degrees of freedom after Welch and Satterthwaite, {@code ν = u⁴(y) / Σ (cᵢuᵢ)⁴/νᵢ}. That formula is for independent
 * inputs: with correlations there are none to state, unless every correlated input has infinitely many, or all inputs were read
 * together in n sets, which leaves n − 1.
 *
 * @source JCGM100
 * @source Satterthwaite1946
 */
public final class Propagation {
    /** Share of a standard uncertainty by which an input is moved to see the result move. */
    private static final double STEP = 1e-3;

    private Propagation() {}

    /**
     * With sensitivities by central differences, refined once (Richardson): inputs are moved by a thousandth of their standard
     * uncertainty, so the model must be defined that far around them.
     *
     * @param model result as a function of the inputs
     * @param inputs with uncertainties and correlations
     * @throws IllegalArgumentException if the correlations cannot hold together
     */
    public static UncertaintyBudget of(Measurand model, UncertainInputs inputs) {
        double[] at = inputs.estimates();
        double[] sensitivities = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            double u = inputs.values().get(i).standardUncertainty();
            double step = u > 0 ? STEP * u : 1e-6 * Math.max(1, Math.abs(at[i]));
            double wide = slope(model, at, i, step);
            double narrow = slope(model, at, i, step / 2);
            sensitivities[i] = (4 * narrow - wide) / 3;
        }
        return of(model.at(at.clone()), sensitivities, inputs);
    }

    /**
     * With sensitivities known from the formula.
     *
     * @param value the result
     * @param sensitivities one per input, in the result's unit per the input's
     * @param inputs with uncertainties and correlations
     * @throws IllegalArgumentException if the correlations cannot hold together
     */
    public static UncertaintyBudget of(double value, double[] sensitivities, UncertainInputs inputs) {
        if (sensitivities.length != inputs.size()) {
            throw new IllegalArgumentException(
                    sensitivities.length + " sensitivities for " + inputs.size() + " inputs");
        }
        inputs.requireCorrelationsHoldTogether();
        double[] moves = new double[sensitivities.length];
        List<UncertaintyBudget.Line> lines = new ArrayList<>();
        for (int i = 0; i < moves.length; i++) {
            UncertainValue input = inputs.values().get(i);
            moves[i] = sensitivities[i] * input.standardUncertainty();
            lines.add(new UncertaintyBudget.Line(inputs.names().get(i), input, sensitivities[i]));
        }
        double uncertainty = Math.sqrt(Math.max(0, variance(moves, inputs)));
        return new UncertaintyBudget(value, uncertainty, degreesOfFreedom(uncertainty, moves, inputs), lines);
    }

    private static double slope(Measurand model, double[] at, int i, double step) {
        double[] moved = at.clone();
        moved[i] = at[i] + step;
        double above = model.at(moved.clone());
        double up = moved[i];
        moved[i] = at[i] - step;
        // The step as the machine took it, not as asked.
        return (above - model.at(moved.clone())) / (up - moved[i]);
    }

    private static double variance(double[] moves, UncertainInputs inputs) {
        double sum = 0;
        for (int i = 0; i < moves.length; i++) {
            sum += moves[i] * moves[i];
            for (int j = 0; j < i; j++) {
                sum += 2 * moves[i] * moves[j] * inputs.correlation(i, j);
            }
        }
        return sum;
    }

    private static OptionalDouble degreesOfFreedom(double uncertainty, double[] moves, UncertainInputs inputs) {
        if (inputs.areObservedTogether()) {
            return OptionalDouble.of(inputs.values().get(0).degreesOfFreedom());
        }
        double sum = 0;
        for (int i = 0; i < moves.length; i++) {
            double own = inputs.values().get(i).degreesOfFreedom();
            if (moves[i] != 0 && Double.isFinite(own)) {
                if (isCorrelated(i, moves, inputs)) {
                    return OptionalDouble.empty();
                }
                sum += StrictMath.pow(moves[i], 4) / own;
            }
        }
        return OptionalDouble.of(sum == 0 ? Double.POSITIVE_INFINITY : StrictMath.pow(uncertainty, 4) / sum);
    }

    private static boolean isCorrelated(int i, double[] moves, UncertainInputs inputs) {
        for (int j = 0; j < moves.length; j++) {
            if (j != i && moves[j] != 0 && inputs.correlation(i, j) != 0) {
                return true;
            }
        }
        return false;
    }
}
