package org.tableweather.analyzers.standard.statistics.interlab;

import java.util.Comparator;
import java.util.List;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Is one laboratory's scatter too large beside the others'? {@code C = max sᵢ² / Σ sᵢ²}.
 *
 * @param c C
 * @param label the laboratory with the largest scatter
 * @param laboratories with at least two results each
 * @param replicates n that the bounds are made for
 * @param critical5Pct 5 % bound
 * @param critical1Pct 1 % bound
 * @source Cochran1941
 * @source ISO57252
 */
public record CochranTest(
        double c, String label, int laboratories, long replicates, double critical5Pct, double critical1Pct) {

    /**
     * Tests the largest scatter. The bounds are made for the commonest number of results.
     *
     * @param laboratories those with one result are left out; refused below 2, or when none varies
     */
    public static Answer<CochranTest> of(List<Laboratory> laboratories) {
        List<Laboratory> repeated =
                laboratories.stream().filter(laboratory -> laboratory.n() > 1).toList();
        if (repeated.size() < 2) {
            return Answer.refuse(
                    Cause.TOO_FEW,
                    repeated.size() + " rooms with two results or more: 2 are needed to compare scatter");
        }
        double total = repeated.stream().mapToDouble(CochranTest::variance).sum();
        if (total == 0) {
            return Answer.refuse(Cause.NO_VARIATION, "results vary in none of " + repeated.size() + " rooms");
        }
        Laboratory widest = repeated.stream()
                .max(Comparator.comparingDouble(CochranTest::variance))
                .orElseThrow();
        int p = repeated.size();
        long n = Replicates.commonest(repeated);
        return Answer.of(new CochranTest(
                variance(widest) / total,
                widest.label(),
                p,
                n,
                CriticalValues.cochran(0.05, p, n),
                CriticalValues.cochran(0.01, p, n)));
    }

    private static double variance(Laboratory laboratory) {
        return laboratory.sumOfSquares() / (laboratory.n() - 1);
    }

    /** What the test says of {@link #label()}. */
    public Verdict verdict() {
        return Verdict.of(c > critical5Pct, c > critical1Pct);
    }
}
