package org.tableweather.analyzers.standard.statistics.binomial;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Minimum;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Logistic model with a random intercept by room: {@code log(p/(1−p)) = β₀ + x'β + b[room]}, {@code b ~ N(0, σ²)}, fitted by
 * the largest likelihood with b integrated out.
 *
 * @param points of adaptive Gauss–Hermite quadrature, 1 to 50; 1 is Laplace's approximation
 * @param coverage of intervals
 * @source Breslow1993
 * @source Pinheiro1995
 * @source Bates2015
 */
public record BinomialMixedModel(int points, Coverage coverage) {

    private static final int MOST_POINTS = 50;
    private static final double[] STARTS = {0.5, 1.5};

    /**
     * Checks the bound.
     *
     * @throws IllegalArgumentException outside it
     */
    public BinomialMixedModel {
        if (points < 1 || points > MOST_POINTS) {
            throw new IllegalArgumentException("points must be 1 to " + MOST_POINTS + ", got " + points);
        }
    }

    /** Nine points, 95 %. */
    public static BinomialMixedModel withDefaults() {
        return new BinomialMixedModel(9, Coverage.DEFAULT);
    }

    /** The same with another number of points. */
    public BinomialMixedModel withPoints(int other) {
        return new BinomialMixedModel(other, coverage);
    }

    /** The same at another coverage. */
    public BinomialMixedModel with(Coverage other) {
        return new BinomialMixedModel(points, other);
    }

    /**
     * Fits.
     *
     * @param cells refused for fewer than 2 rooms, one attempt per room, all made or all missed, columns that determine each
     *     other, a column that parts made from missed, and a search that does not settle
     * @throws IllegalArgumentException when cells differ in their number of columns
     */
    public Answer<BinomialFit> fit(List<BinomialCell> cells) {
        return BinomialData.of(cells).then(this::fit);
    }

    private Answer<BinomialFit> fit(BinomialData data) {
        if (!LogisticRegression.identified(data.clusters())) {
            return Answer.refuse(Cause.COLLINEAR, "columns determine each other, or one never changes");
        }
        Optional<LogisticRegression> naive = LogisticRegression.fit(data.clusters());
        if (naive.isEmpty()) {
            return Answer.refuse(
                    Cause.SEPARATION, "a column parts what was made from what was missed: no finite coefficient");
        }
        BinomialDeviance deviance = new BinomialDeviance(data, new HermiteNodes(points));
        Minimum best = null;
        for (double sigma : STARTS) {
            Minimum minimum = SaddleFreeNewton.minimise(deviance, deviance.start(naive.get(), sigma));
            if (minimum.converged() && (best == null || minimum.value() < best.value())) {
                best = minimum;
            }
        }
        if (best == null) {
            return Answer.refuse(Cause.NOT_CONVERGED, "the search for the largest likelihood did not settle");
        }
        return Answer.of(new BinomialFit(this, data, deviance, naive.get(), best.at()));
    }
}
