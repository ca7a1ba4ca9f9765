package org.tableweather.analyzers.standard.statistics.nonlinear;

import java.util.Arrays;
import java.util.List;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton;
import org.tableweather.analyzers.standard.numeric.SaddleFreeNewton.Minimum;
import org.tableweather.analyzers.standard.statistics.algebra.PositiveDefinite;
import org.tableweather.analyzers.standard.statistics.answer.Answer;
import org.tableweather.analyzers.standard.statistics.answer.Refusal.Cause;

/**
 * Responses that follow from few parameters by any smooth function, the parameters linear in coefficients that vary between rooms and
 * sessions: {@code y = f(A(β + u[room] + w[session])) + e}, u, w and e normal, the covariance of e known from repeats.
 *
 * <p>Gauss–Newton: linearise f about the present β, u, w; fit the linear mixed model by restricted likelihood; take its β, u, w; repeat until
 * nothing moves. Derivatives of f by central differences. At the end this is Laplace's approximation with the second derivatives of f left
 * out.
 *
 * @param roomColumns which coefficients vary between rooms
 * @param sessionColumns which vary between sessions
 * @param scales how much each coefficient might matter: standard deviations begin at half of this, and no step is beyond three
 * @source LindstromBates1990
 * @source Pinheiro2000
 */
public record NonlinearMixedModel(int[] roomColumns, int[] sessionColumns, double[] scales) {

    private static final int MOST_LINEARISATIONS = 60;
    /** A step below this part of the standard error is none. */
    private static final double SETTLED = 1e-4;
    /** From this round on steps are halved, so that what goes to and fro over a kink of f comes to rest. */
    private static final int DAMPED = 8;
    /** From this round on a twentieth of the standard error will do. */
    private static final int PATIENT = 20;

    private static final double NEARLY = 5e-2;
    /** No coefficient moves by more than this many of its scale at once. */
    private static final double FAR = 3;

    private static final double START = 0.5;
    private static final double ON_BOUND = 1e-4;
    private static final double INDEPENDENT = 1e-10;

    /**
     * Fits.
     *
     * @param cells of at least two rooms
     * @param start coefficients to begin with
     * @return refused when the cells do not tell the coefficients apart, or the search does not settle
     */
    public Answer<NonlinearFit> fit(List<ResponseCell> cells, double[] start) {
        GroupedCells grouped = GroupedCells.of(cells, start.length);
        double[] deviations = new double[roomColumns.length + sessionColumns.length];
        Arrays.fill(deviations, START);
        double[] beta = start.clone();
        for (int round = 1; round <= MOST_LINEARISATIONS; round++) {
            List<List<double[][]>> products = grouped.crossProducts(beta, this);
            LinearisedCriterion criterion = criterion(products, beta.length);
            if (!tellsApart(products, beta.length)) {
                return Answer.refuse(Cause.COLLINEAR, "the cells do not tell the coefficients apart");
            }
            Minimum minimum = SaddleFreeNewton.minimise(criterion, nudged(deviations));
            if (!Double.isFinite(minimum.value())) {
                return Answer.refuse(Cause.NOT_CONVERGED, "the restricted likelihood is not finite");
            }
            deviations = minimum.at();
            criterion.evaluate(deviations, new double[deviations.length]);
            double moved = move(grouped, beta, criterion, deviations, round < DAMPED ? 1 : 0.5);
            if (moved < (round < PATIENT ? SETTLED : NEARLY)) {
                return Answer.of(finished(grouped, criterion, deviations, minimum.value(), round));
            }
        }
        return Answer.refuse(
                Cause.NOT_CONVERGED, "Gauss-Newton did not settle in " + MOST_LINEARISATIONS + " linearisations");
    }

    /**
     * Covariance that cells of such a design would give the coefficients, at given coefficients and standard deviations; what was observed
     * does not matter.
     *
     * @param deviations of rooms' effects, then of sessions'
     * @return refused when they do not tell the coefficients apart
     */
    public Answer<double[][]> expected(List<ResponseCell> cells, double[] coefficients, double[] deviations) {
        GroupedCells grouped = GroupedCells.of(cells, coefficients.length);
        List<List<double[][]>> products = grouped.crossProducts(coefficients, this);
        LinearisedCriterion criterion = criterion(products, coefficients.length);
        if (!tellsApart(products, coefficients.length)) {
            return Answer.refuse(Cause.COLLINEAR, "the cells do not tell the coefficients apart");
        }
        double[] at = deviations.clone();
        for (int i = 0; i < at.length; i++) {
            at[i] /= scale(i);
        }
        criterion.evaluate(at, new double[at.length]);
        return Answer.of(criterion.covariance());
    }

    // the search leaves a standard deviation of nought by its curvature alone; a nudge spares it that
    private static double[] nudged(double[] deviations) {
        double[] nudged = deviations.clone();
        for (int i = 0; i < nudged.length; i++) {
            nudged[i] = Math.max(Math.abs(nudged[i]), 1e-2);
        }
        return nudged;
    }

    private double scale(int i) {
        return i < roomColumns.length ? scales[roomColumns[i]] : scales[sessionColumns[i - roomColumns.length]];
    }

    private LinearisedCriterion criterion(List<List<double[][]>> products, int size) {
        double[] random = new double[roomColumns.length + sessionColumns.length];
        for (int i = 0; i < random.length; i++) {
            random[i] = scale(i);
        }
        return new LinearisedCriterion(products, roomColumns, sessionColumns, random, size);
    }

    private static boolean tellsApart(List<List<double[][]>> products, int size) {
        double[][] information = new double[size][size];
        products.forEach(room -> room.forEach(session -> {
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    information[i][j] += session[i][j];
                }
            }
        }));
        return PositiveDefinite.of(information, INDEPENDENT).isPresent();
    }

    /** Takes over β and effects; gives the largest step over its standard error. */
    private double move(
            GroupedCells grouped, double[] beta, LinearisedCriterion criterion, double[] deviations, double most) {
        double moved = 0;
        double far = 1;
        double[] next = criterion.coefficients();
        double[][] covariance = criterion.covariance();
        for (int i = 0; i < beta.length; i++) {
            double step = Math.abs(next[i] - beta[i]);
            moved = Math.max(moved, step / Math.sqrt(covariance[i][i]));
            far = Math.max(far, step / scales[i] / FAR);
        }
        for (int i = 0; i < beta.length; i++) {
            beta[i] += Math.min(most, 1 / far) * (next[i] - beta[i]);
        }
        grouped.take(criterion.modes(deviations));
        return moved;
    }

    private NonlinearFit finished(
            GroupedCells grouped, LinearisedCriterion criterion, double[] at, double value, int rounds) {
        double[] deviations = criterion.deviations(at);
        for (int i = 0; i < deviations.length; i++) {
            deviations[i] = Math.abs(at[i]) < ON_BOUND ? 0 : Math.abs(deviations[i]);
        }
        double[] beta = criterion.coefficients();
        return new NonlinearFit(
                beta,
                criterion.covariance(),
                Arrays.copyOf(deviations, roomColumns.length),
                Arrays.copyOfRange(deviations, roomColumns.length, deviations.length),
                grouped.rooms(),
                value,
                rounds,
                grouped.chiSquared(beta, this));
    }
}
