package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Mandel's consistency statistics: {@code hᵢ = (ȳᵢ − mean of means) / sd of means}, {@code kᵢ = sᵢ √p / √(Σ sᵢ²)}.
 *
 * @param laboratories in the order given
 * @param replicates the commonest number of results, which the bounds of k are made for; 0 when nobody has two
 * @source Mandel1985
 * @source ASTME691
 */
public record Consistency(List<Statistic> laboratories, long replicates) {

    /**
     * One laboratory's statistics.
     *
     * @param label which
     * @param h distance of its mean from the others, in their standard deviations
     * @param k its scatter beside the pooled one; empty for one result
     */
    public record Statistic(String label, double h, OptionalDouble k) {}

    /**
     * Works them out.
     *
     * @param laboratories refused below 3, or when all means are equal; k is empty when nobody's results vary
     */
    public static Answer<Consistency> of(List<Laboratory> laboratories) {
        int p = laboratories.size();
        if (p < 3) {
            return Answer.refuse(Cause.TOO_FEW, p + " rooms: 3 are needed to tell which one is apart");
        }
        MeansSpread spread = MeansSpread.of(laboratories);
        if (spread.squares() == 0) {
            return Answer.refuse(Cause.NO_VARIATION, "the means of " + p + " rooms are equal");
        }
        List<Laboratory> repeated = laboratories.stream().filter(l -> l.n() > 1).toList();
        double pooledSd = Math.sqrt(repeated.stream()
                .mapToDouble(l -> l.sumOfSquares() / (l.n() - 1))
                .average()
                .orElse(0));
        List<Statistic> statistics = laboratories.stream()
                .map(l -> new Statistic(l.label(), spread.standardised(l), k(l, pooledSd)))
                .toList();
        return Answer.of(new Consistency(statistics, Replicates.commonest(repeated)));
    }

    private static OptionalDouble k(Laboratory laboratory, double pooledSd) {
        return laboratory.n() > 1 && pooledSd > 0
                ? OptionalDouble.of(laboratory.standardDeviation() / pooledSd)
                : OptionalDouble.empty();
    }

    /** Bound of |h| for one laboratory. */
    public double criticalH(double alpha) {
        return CriticalValues.mandelH(alpha, laboratories.size());
    }

    /**
     * Bound of k for one laboratory; empty when fewer than two have a k.
     *
     * @param alpha chance that a consistent laboratory exceeds it
     */
    public OptionalDouble criticalK(double alpha) {
        int compared =
                (int) laboratories.stream().filter(s -> s.k().isPresent()).count();
        return compared < 2
                ? OptionalDouble.empty()
                : OptionalDouble.of(CriticalValues.mandelK(alpha, compared, replicates));
    }
}
