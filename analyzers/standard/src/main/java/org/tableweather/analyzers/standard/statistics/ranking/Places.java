package org.tableweather.analyzers.standard.statistics.ranking;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * The place of one among several independent normal values, 1 for the largest: given its own value x, each other is larger with
 * the chance {@code Φ((mⱼ − x)/sⱼ)}, so the number of larger ones is a sum of unlike coin throws; over x it is integrated by the
 * trapezoid rule, which is next to exact for a normal weight.
 *
 * @param chance of each place, the first at 0; sums to 1
 * @source Laird1989
 * @source Goldstein1996
 */
public record Places(List<Double> chance) {

    private static final double REACH = 8;
    private static final int STEPS = 400;
    private static final int FEWER_STEPS = 80;
    /** Above this many values the coarser steps are taken: single places are then rough, intervals of places stand. */
    private static final int MANY = 1000;

    public Places {
        chance = List.copyOf(chance);
    }

    /**
     * Works them out.
     *
     * @param which of the values
     * @param means of the values
     * @param variances of the values; refused when one is not above 0
     */
    public static Answer<Places> of(int which, double[] means, double[] variances) {
        for (double variance : variances) {
            if (!(variance > 0)) {
                return Answer.refuse(
                        Cause.NO_VARIATION, "a value has no variance: there are no places to tell between");
            }
        }
        int steps = means.length > MANY ? FEWER_STEPS : STEPS;
        double[] total = new double[means.length];
        double weights = 0;
        for (int step = 0; step <= steps; step++) {
            double z = REACH * (2.0 * step / steps - 1);
            double weight = StrictMath.exp(-z * z / 2);
            double[] larger = larger(which, means[which] + z * Math.sqrt(variances[which]), means, variances);
            for (int place = 0; place < total.length; place++) {
                total[place] += weight * larger[place];
            }
            weights += weight;
        }
        double sum = weights;
        return Answer.of(new Places(
                Arrays.stream(total).map(share -> share / sum).boxed().toList()));
    }

    /** Chances of 0, 1, 2 ... larger others. */
    private static double[] larger(int which, double at, double[] means, double[] variances) {
        NormalDistribution normal = new NormalDistribution();
        double[] chances = new double[means.length];
        chances[0] = 1;
        int others = 0;
        for (int other = 0; other < means.length; other++) {
            if (other != which) {
                double p = normal.cumulativeProbability((means[other] - at) / Math.sqrt(variances[other]));
                others++;
                for (int count = others; count > 0; count--) {
                    chances[count] = chances[count] * (1 - p) + chances[count - 1] * p;
                }
                chances[0] *= 1 - p;
            }
        }
        return chances;
    }

    /** Mean place. */
    public double expected() {
        double sum = 0;
        for (int place = 0; place < chance.size(); place++) {
            sum += (place + 1) * chance.get(place);
        }
        return sum;
    }

    /** Best place that is not ruled out: the first that leaves more than the tail of the coverage at or before it. */
    public int best(Coverage coverage) {
        double sum = 0;
        for (int place = 0; place < chance.size(); place++) {
            sum += chance.get(place);
            if (sum > coverage.tail()) {
                return place + 1;
            }
        }
        return chance.size();
    }

    /** Worst place that is not ruled out: the last that leaves more than the tail of the coverage at or behind it. */
    public int worst(Coverage coverage) {
        double sum = 0;
        for (int place = chance.size() - 1; place >= 0; place--) {
            sum += chance.get(place);
            if (sum > coverage.tail()) {
                return place + 1;
            }
        }
        return 1;
    }
}
