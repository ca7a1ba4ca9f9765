package org.tableweather.analyzers.standard.numeric;

/**
 * Finds a minimum of a smooth function of few unbounded parameters from its gradient, and is not held up by saddles.
 *
 * <p>Newton steps with the Hessian {@code H = U diag(λ) U'}, each eigenvalue replaced by
 * its magnitude: {@code step = −U (U'g / |λ|)}. Where the gradient vanishes but an eigenvalue is negative, as at a variance
 * of zero that is no minimum, it leaves along that eigenvector. Parameters should be scaled to order one.
 *
 * @source Dauphin2014
 */
public final class SaddleFreeNewton {

    private static final int MOST_ITERATIONS = 60;
    private static final int MOST_HALVINGS = 40;
    private static final int MOST_POLISHES = 3;
    private static final int FLAT_STEPS = 4;
    private static final double FLAT = 1e-11;

    private final Objective objective;
    private final int size;
    private double[] at;
    private double[] gradient;
    private double value;
    private double[][] directions;
    private double[] magnitudes;
    private double[] along;
    private int lowest;
    private boolean curvedDown;

    private SaddleFreeNewton(Objective objective, double[] start) {
        this.objective = objective;
        this.size = start.length;
        this.at = start.clone();
        this.gradient = new double[size];
        this.value = objective.evaluate(at, gradient);
    }

    /** A function with its gradient. */
    @FunctionalInterface
    public interface Objective {
        /**
         * The value, with the gradient written into the second argument.
         *
         * @return NaN where the function is not defined
         */
        double evaluate(double[] at, double[] gradient);

        /**
         * The second derivatives, by forward differences of the gradient unless the function knows better.
         *
         * @param gradient there
         * @return symmetric; with an entry that is not finite where the function is not defined
         */
        default double[][] hessian(double[] at, double[] gradient) {
            int size = at.length;
            double[][] hessian = new double[size][size];
            double[] moved = new double[size];
            for (int i = 0; i < size; i++) {
                double[] there = at.clone();
                there[i] += 1e-4 * Math.max(0.1, Math.abs(at[i]));
                double width = there[i] - at[i];
                if (Double.isNaN(evaluate(there, moved))) {
                    hessian[i][i] = Double.NaN;
                    return hessian;
                }
                for (int j = 0; j < size; j++) {
                    hessian[i][j] = (moved[j] - gradient[j]) / width;
                }
            }
            symmetrise(hessian);
            return hessian;
        }
    }

    /**
     * Where the search ended.
     *
     * @param at the parameters
     * @param value of the function there
     * @param converged false when the search ran out of iterations or of finite values
     */
    public record Minimum(double[] at, double value, boolean converged) {}

    /**
     * Searches from one start.
     *
     * @param objective smooth; even and unbounded parameters are fine
     * @param start at least one parameter
     */
    public static Minimum minimise(Objective objective, double[] start) {
        SaddleFreeNewton search = new SaddleFreeNewton(objective, start);
        boolean converged = Double.isFinite(search.value) && search.descend();
        return new Minimum(search.at, search.value, converged);
    }

    private boolean descend() {
        int flat = 0;
        for (int iteration = 0; iteration < MOST_ITERATIONS; iteration++) {
            if (!measureCurvature()) {
                return false;
            }
            double promised = promisedDecrease();
            double[] step = newtonStep();
            if (curvedDown && promised < 1e-8) {
                leaveSaddle(step);
            } else if (promised < 1e-10 * Math.max(1, 1e-3 * Math.abs(value))) {
                polish();
                return true;
            }
            double before = value;
            if (!walk(step)) {
                return promised < 1e-6;
            }
            flat = !curvedDown && Math.abs(before - value) < FLAT * Math.abs(value) ? flat + 1 : 0;
            if (flat == FLAT_STEPS) {
                return true;
            }
        }
        return false;
    }

    private boolean measureCurvature() {
        double[][] hessian = objective.hessian(at, gradient);
        for (double[] row : hessian) {
            for (double entry : row) {
                if (!Double.isFinite(entry)) {
                    return false;
                }
            }
        }
        SymmetricEigen eigen = SymmetricEigen.of(hessian);
        double largest = eigen.largestMagnitude();
        directions = eigen.vectors();
        lowest = eigen.smallest();
        curvedDown = eigen.values()[lowest] < -1e-6 * largest;
        magnitudes = new double[size];
        for (int i = 0; i < size; i++) {
            magnitudes[i] = Math.max(Math.abs(eigen.values()[i]), Math.max(1e-8 * largest, Double.MIN_NORMAL));
        }
        along = rotate(gradient);
        return true;
    }

    private static void symmetrise(double[][] matrix) {
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < i; j++) {
                double mean = (matrix[i][j] + matrix[j][i]) / 2;
                matrix[i][j] = mean;
                matrix[j][i] = mean;
            }
        }
    }

    private double[] rotate(double[] vector) {
        double[] rotated = new double[size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                rotated[i] += directions[i][j] * vector[j];
            }
        }
        return rotated;
    }

    private double promisedDecrease() {
        return weigh(along) / 2;
    }

    private double weigh(double[] rotated) {
        double sum = 0;
        for (int i = 0; i < size; i++) {
            sum += rotated[i] * rotated[i] / magnitudes[i];
        }
        return sum;
    }

    private double[] newtonStep() {
        double[] step = new double[size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                step[j] -= along[i] / magnitudes[i] * directions[i][j];
            }
        }
        return step;
    }

    private void leaveSaddle(double[] step) {
        double sign = along[lowest] > 0 ? -0.3 : 0.3;
        for (int j = 0; j < size; j++) {
            step[j] += sign * directions[lowest][j];
        }
    }

    /** Last steps judged by the gradient: the value is flat to rounding here and cannot judge them. */
    private void polish() {
        double left = weigh(along);
        for (int i = 0; i < MOST_POLISHES && left > 0; i++) {
            double[] there = sum(at, newtonStep(), 1);
            double[] slope = new double[size];
            double level = objective.evaluate(there, slope);
            double[] rotated = rotate(slope);
            double leftThere = weigh(rotated);
            if (Double.isNaN(level) || !(leftThere < left)) {
                return;
            }
            at = there;
            value = level;
            gradient = slope;
            along = rotated;
            boolean worthwhile = leftThere < left / 4;
            left = leftThere;
            if (!worthwhile) {
                return;
            }
        }
    }

    private boolean walk(double[] step) {
        double cap = Math.max(1, largest(at)) / largest(step);
        double scale = Math.min(1, cap);
        double slope = 0;
        for (int i = 0; i < size; i++) {
            slope -= gradient[i] * step[i];
        }
        double gain = 1e-4 * Math.max(0, slope);
        double[] there = at;
        double[] slopeThere = new double[size];
        for (int halving = 0; halving < MOST_HALVINGS; halving++) {
            there = sum(at, step, scale);
            double level = objective.evaluate(there, slopeThere);
            if (level <= value - scale * gain + FLAT * Math.abs(value)) {
                at = there;
                value = level;
                gradient = slopeThere;
                return true;
            }
            scale /= 2;
        }
        return false;
    }

    private static double[] sum(double[] a, double[] b, double scale) {
        double[] sum = a.clone();
        for (int i = 0; i < a.length; i++) {
            sum[i] += scale * b[i];
        }
        return sum;
    }

    private static double largest(double[] vector) {
        double largest = 0;
        for (double entry : vector) {
            largest = Math.max(largest, Math.abs(entry));
        }
        return largest;
    }
}
