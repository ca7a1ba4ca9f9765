package org.tableweather.schema.geometry;

import java.util.List;
import java.util.Optional;

/**
 * The projective map nearest to pairs of points, in scaled coordinates: a linear start, then Gauss–Newton on the distances
 * in the image, where the marking errors are.
 *
 * @source HartleyZisserman2004
 */
final class ProjectiveFit {

    private static final double RANK_TOLERANCE = 1e-10;
    private static final double CONVERGED = 1e-11;
    private static final int MOST_STEPS = 50;
    private static final int MOST_HALVINGS = 30;

    private final List<double[]> from;
    private final List<double[]> to;

    ProjectiveFit(List<double[]> from, List<double[]> to) {
        this.from = from;
        this.to = to;
    }

    /** Empty when the points do not determine a map, or the steps do not settle. */
    Optional<ProjectiveMap> best() {
        Optional<ProjectiveMap> map = linear();
        for (int step = 0; step < MOST_STEPS && map.isPresent(); step++) {
            Optional<double[]> correction = correction(map.get());
            if (correction.isEmpty()) {
                return Optional.empty();
            }
            Optional<ProjectiveMap> better = shorter(map.get(), correction.get());
            if (better.isEmpty() || largest(correction.get()) <= CONVERGED) {
                return better.isPresent() ? better : map;
            }
            map = better;
        }
        return Optional.empty();
    }

    /** Sum of squared distances in the image. */
    double squares(ProjectiveMap map) {
        double sum = 0;
        for (double residual : residuals(map)) {
            sum += residual * residual;
        }
        return sum;
    }

    /** {@code (JᵀJ)⁻¹}: covariance of the coefficients for image errors of variance 1. */
    double[][] unitCovariance(ProjectiveMap map) {
        return new LeastSquares(jacobian(map), new double[2 * from.size()], 0).inverseOfNormal();
    }

    private Optional<ProjectiveMap> linear() {
        double[][] rows = new double[2 * from.size()][];
        double[] right = new double[2 * from.size()];
        for (int i = 0; i < from.size(); i++) {
            double[] x = from.get(i);
            double[] u = to.get(i);
            rows[2 * i] = new double[] {x[0], x[1], 1, 0, 0, 0, -x[0] * u[0], -x[1] * u[0]};
            rows[2 * i + 1] = new double[] {0, 0, 0, x[0], x[1], 1, -x[0] * u[1], -x[1] * u[1]};
            right[2 * i] = u[0];
            right[2 * i + 1] = u[1];
        }
        LeastSquares solved = new LeastSquares(rows, right, RANK_TOLERANCE);
        return solved.hasFullRank() ? Optional.of(new ProjectiveMap(solved.solution())) : Optional.empty();
    }

    private Optional<double[]> correction(ProjectiveMap map) {
        LeastSquares solved = new LeastSquares(jacobian(map), residuals(map), RANK_TOLERANCE);
        return solved.hasFullRank() ? Optional.of(solved.solution()) : Optional.empty();
    }

    /** The longest part of a step that does not lengthen the distances; empty at a minimum within rounding. */
    private Optional<ProjectiveMap> shorter(ProjectiveMap map, double[] correction) {
        double before = squares(map);
        double part = 1;
        for (int i = 0; i < MOST_HALVINGS; i++) {
            ProjectiveMap moved = map.plus(correction, part);
            if (squares(moved) <= before) {
                return Optional.of(moved);
            }
            part /= 2;
        }
        return Optional.empty();
    }

    private double[][] jacobian(ProjectiveMap map) {
        double[][] rows = new double[2 * from.size()][];
        for (int i = 0; i < from.size(); i++) {
            double[][] pair = map.byCoefficients(from.get(i));
            rows[2 * i] = pair[0];
            rows[2 * i + 1] = pair[1];
        }
        return rows;
    }

    private double[] residuals(ProjectiveMap map) {
        double[] residuals = new double[2 * from.size()];
        for (int i = 0; i < from.size(); i++) {
            double[] image = map.image(from.get(i));
            residuals[2 * i] = to.get(i)[0] - image[0];
            residuals[2 * i + 1] = to.get(i)[1] - image[1];
        }
        return residuals;
    }

    private static double largest(double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Math.max(largest, Math.abs(value));
        }
        return largest;
    }
}
