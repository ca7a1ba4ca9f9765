package org.tableweather.analyzers.standard.statistics.meta;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Do rooms with few trials tell another story than rooms with many? Regression of the estimates on their standard errors:
 * a slope means an uneven funnel, and the intercept is the effect of an endlessly large room.
 *
 * <p>Either the classical form, weights {@code 1/v} and a multiplicative residual variance on k − 2 degrees of freedom, or
 * the mixed form with an additive τ². Unevenness has other causes than unpublished results; below 10 rooms the test is weak.
 *
 * @source Egger1997
 * @source Sterne2005
 */
public final class SmallStudyAsymmetry {

    private static final double LEAST_SPREAD = 1e-6;

    private SmallStudyAsymmetry() {}

    /**
     * The answer.
     *
     * @param slope of the estimate on its standard error, with the test
     * @param limit the estimate at a standard error of 0
     */
    public record Result(PooledEffect slope, PooledEffect limit) {}

    /** Classical form: {@code yᵢ = a + b sᵢ}, weights {@code 1/sᵢ²}. Refused below 3 rooms or with equal standard errors. */
    public static Answer<Result> classical(List<StudyEffect> effects) {
        return test(
                effects,
                MetaAnalysis.withDefaults().with(HeterogeneityMethod.FIXED).with(IntervalMethod.HARTUNG_KNAPP));
    }

    /**
     * Mixed form: the standard error as a moderator of a random-effects model.
     *
     * @param effects refused below 3 rooms or with equal standard errors
     * @param analysis estimator of τ² and kind of interval
     */
    public static Answer<Result> test(List<StudyEffect> effects, MetaAnalysis analysis) {
        if (!errorsDiffer(effects)) {
            return Answer.refuse(
                    Cause.NO_VARIATION, "all rooms have the same standard error: small and large cannot be compared");
        }
        double[][] errors = effects.stream()
                .map(effect -> new double[] {effect.standardError()})
                .toArray(double[][]::new);
        return analysis.regress(effects, errors)
                .then(fit -> Answer.of(new Result(fit.slopes().get(0), fit.intercept())));
    }

    private static boolean errorsDiffer(List<StudyEffect> effects) {
        double smallest = Double.POSITIVE_INFINITY;
        double largest = 0;
        for (StudyEffect effect : effects) {
            smallest = Math.min(smallest, effect.standardError());
            largest = Math.max(largest, effect.standardError());
        }
        return effects.size() < 3 || largest - smallest > LEAST_SPREAD * largest;
    }
}
