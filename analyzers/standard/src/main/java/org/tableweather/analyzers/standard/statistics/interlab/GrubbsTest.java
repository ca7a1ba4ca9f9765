package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Do one or two laboratories' means lie apart? Single: {@code G = |x − x̄| / s} at either end. Double:
 * {@code SS without the two largest (smallest) / SS}, small when they lie apart.
 *
 * @param high of the largest mean
 * @param low of the smallest mean
 * @param twoHigh of the two largest means; empty beyond 100 laboratories
 * @param twoLow of the two smallest means; likewise
 * @source Grubbs1950
 * @source Grubbs1969
 * @source ISO57252
 */
public record GrubbsTest(Suspect high, Suspect low, Optional<Suspect> twoHigh, Optional<Suspect> twoLow) {

    private static final int LEAST = 4;

    /**
     * One test.
     *
     * @param labels the laboratories under suspicion
     * @param statistic G, or the ratio
     * @param critical5Pct 5 % bound, both ends being tested
     * @param critical1Pct 1 % bound
     * @param verdict what it says
     */
    public record Suspect(
            List<String> labels, double statistic, double critical5Pct, double critical1Pct, Verdict verdict) {}

    /**
     * Tests the means. Look at the double test only when the single ones find nothing.
     *
     * @param laboratories refused below 4, or when all means are equal
     */
    public static Answer<GrubbsTest> of(List<Laboratory> laboratories) {
        if (laboratories.size() < LEAST) {
            return Answer.refuse(
                    Cause.TOO_FEW, laboratories.size() + " rooms: " + LEAST + " are needed to tell outlying means");
        }
        List<Laboratory> sorted = laboratories.stream()
                .sorted(Comparator.comparingDouble(Laboratory::mean))
                .toList();
        if (sorted.get(0).mean() == sorted.get(sorted.size() - 1).mean()) {
            return Answer.refuse(Cause.NO_VARIATION, "the means of " + sorted.size() + " rooms are equal");
        }
        int p = sorted.size();
        Bounds single = new Bounds(CriticalValues.grubbs(0.05, p), CriticalValues.grubbs(0.01, p));
        Optional<Bounds> pair = pairBounds(p);
        return Answer.of(new GrubbsTest(
                single(sorted, p - 1, single),
                single(sorted, 0, single),
                pair.map(bounds -> pair(sorted, p - 2, bounds)),
                pair.map(bounds -> pair(sorted, 0, bounds))));
    }

    private static Optional<Bounds> pairBounds(int p) {
        if (p > TwoOutlierRatio.MOST) {
            return Optional.empty();
        }
        TwoOutlierRatio ratio = new TwoOutlierRatio(p);
        return Optional.of(new Bounds(ratio.quantile(0.025), ratio.quantile(0.005)));
    }

    private record Bounds(double five, double one) {}

    private static Suspect single(List<Laboratory> sorted, int at, Bounds bounds) {
        double g = Math.abs(MeansSpread.of(sorted).standardised(sorted.get(at)));
        return new Suspect(
                List.of(sorted.get(at).label()),
                g,
                bounds.five,
                bounds.one,
                Verdict.of(g > bounds.five, g > bounds.one));
    }

    private static Suspect pair(List<Laboratory> sorted, int from, Bounds bounds) {
        List<Laboratory> others = from == 0 ? sorted.subList(2, sorted.size()) : sorted.subList(0, from);
        double ratio = MeansSpread.of(others).squares() / MeansSpread.of(sorted).squares();
        return new Suspect(
                List.of(sorted.get(from).label(), sorted.get(from + 1).label()),
                ratio,
                bounds.five,
                bounds.one,
                Verdict.of(ratio < bounds.five, ratio < bounds.one));
    }
}
