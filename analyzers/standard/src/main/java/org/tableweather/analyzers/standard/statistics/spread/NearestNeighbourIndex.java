package org.tableweather.analyzers.standard.statistics.spread;

import java.util.List;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Coverage;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * How far balls lie apart beside a random scatter: {@code R = mean distance to the nearest neighbour / expected}, 1 for
 * random, below for clustered, above for spread.
 *
 * @param balls N
 * @param observed mean distance, in the unit of the positions
 * @param expected of a random scatter on the same bed
 * @param standardError of the observed mean, for a random scatter
 * @source Clark1954
 * @source Donnelly1978
 */
public record NearestNeighbourIndex(int balls, double observed, double expected, double standardError) {

    /**
     * Measures one scatter.
     *
     * @param positions refused below 2
     * @param length of the rectangle that the positions can reach, above 0: nose to nose less a ball's diameter for centres
     * @param width likewise
     * @param correction for the edges
     * @throws IllegalArgumentException for a rectangle without area or a position outside it
     */
    public static Answer<NearestNeighbourIndex> of(
            List<BallPosition> positions, double length, double width, EdgeCorrection correction) {
        requireInside(positions, length, width);
        if (positions.size() < 2) {
            return Answer.refuse(Cause.TOO_FEW, positions.size() + " balls on the bed: 2 are needed for a neighbour");
        }
        ScatterExpectation random = ScatterExpectation.of(positions.size(), length, width, correction);
        return Answer.of(new NearestNeighbourIndex(
                positions.size(), meanDistance(positions), random.meanDistance(), random.standardError()));
    }

    private static void requireInside(List<BallPosition> positions, double length, double width) {
        if (!(length > 0 && width > 0)) {
            throw new IllegalArgumentException("bed needs length and width above 0, got " + length + " and " + width);
        }
        for (BallPosition position : positions) {
            boolean inside = position.x() >= 0 && position.x() <= length && position.y() >= 0 && position.y() <= width;
            if (!inside) {
                throw new IllegalArgumentException(position + " is outside the bed of " + length + " x " + width);
            }
        }
    }

    private static double meanDistance(List<BallPosition> positions) {
        double sum = 0;
        for (int i = 0; i < positions.size(); i++) {
            double nearest = Double.POSITIVE_INFINITY;
            for (int j = 0; j < positions.size(); j++) {
                if (i != j) {
                    nearest = Math.min(nearest, positions.get(i).distance(positions.get(j)));
                }
            }
            sum += nearest;
        }
        return sum / positions.size();
    }

    /** R. */
    public double index() {
        return observed / expected;
    }

    /** {@code (observed − expected) / standardError}. */
    public double z() {
        return (observed - expected) / standardError;
    }

    /** Two-sided chance of so large a z for a random scatter, normal: rough below 10 balls. */
    public double pValue() {
        return Coverage.twoSided(z(), Double.POSITIVE_INFINITY);
    }
}
