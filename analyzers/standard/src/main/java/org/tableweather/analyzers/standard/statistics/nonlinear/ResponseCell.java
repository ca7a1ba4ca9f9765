package org.tableweather.analyzers.standard.statistics.nonlinear;

/**
 * Trials under equal conditions: their mean responses, and how these follow from the parameters.
 *
 * @param room label of the room
 * @param session label of the session, unique within the room
 * @param observed mean responses, k
 * @param weights inverse of the covariance of the means, k × k, positive definite
 * @param design from the coefficients to the parameters of the mean, d × q: {@code p = design (β + u + w)}
 * @param mean the responses that parameters give
 */
public record ResponseCell(
        String room, String session, double[] observed, double[][] weights, double[][] design, Mean mean) {

    /** What the responses are for given parameters. */
    @FunctionalInterface
    public interface Mean {
        /**
         * The responses.
         *
         * @param parameters d
         * @return k
         */
        double[] at(double[] parameters);

        /** By how much parameters are moved to take a derivative. */
        default double step() {
            return 1e-4;
        }
    }

    int responses() {
        return observed.length;
    }

    /** {@code design · coefficients}. */
    double[] parameters(double[] coefficients) {
        double[] parameters = new double[design.length];
        for (int i = 0; i < design.length; i++) {
            for (int j = 0; j < coefficients.length; j++) {
                parameters[i] += design[i][j] * coefficients[j];
            }
        }
        return parameters;
    }

    /** ∂mean/∂p by central differences, k × d. */
    static double[][] jacobian(Mean mean, double[] parameters, int responses) {
        double[][] jacobian = new double[responses][parameters.length];
        double[] there = parameters.clone();
        double step = mean.step();
        for (int i = 0; i < parameters.length; i++) {
            there[i] = parameters[i] + step;
            double[] up = mean.at(there);
            there[i] = parameters[i] - step;
            double[] down = mean.at(there);
            there[i] = parameters[i];
            for (int k = 0; k < responses; k++) {
                jacobian[k][i] = (up[k] - down[k]) / (2 * step);
            }
        }
        return jacobian;
    }

    /** {@code [J design | z]}, k × (q + 1), with the working response {@code z = y − f + J p}. */
    double[][] linearised(double[] coefficients) {
        double[] parameters = parameters(coefficients);
        double[] fitted = mean.at(parameters);
        double[][] jacobian = jacobian(mean, parameters, responses());
        int q = coefficients.length;
        double[][] rows = new double[responses()][q + 1];
        for (int k = 0; k < rows.length; k++) {
            rows[k][q] = observed[k] - fitted[k];
            for (int i = 0; i < parameters.length; i++) {
                rows[k][q] += jacobian[k][i] * parameters[i];
                for (int j = 0; j < q; j++) {
                    rows[k][j] += jacobian[k][i] * design[i][j];
                }
            }
        }
        return rows;
    }

    /** {@code y − f}. */
    double[] residuals(double[] coefficients) {
        double[] residuals = mean.at(parameters(coefficients));
        for (int k = 0; k < residuals.length; k++) {
            residuals[k] = observed[k] - residuals[k];
        }
        return residuals;
    }
}
