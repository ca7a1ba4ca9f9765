package org.tableweather.analyzers.standard.statistics.nonlinear;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.answer.Answer;

class NonlinearMixedModelTest {

    private static final int[] AGES = {118, 484, 664, 1004, 1231, 1372, 1582};

    /** Trunk circumference of five orange trees, mm: data set Orange of R. */
    private static final int[][] TREES = {
        {30, 58, 87, 115, 120, 142, 145},
        {33, 69, 111, 156, 172, 203, 203},
        {30, 51, 75, 108, 115, 139, 140},
        {32, 62, 112, 167, 179, 209, 214},
        {30, 49, 81, 125, 142, 174, 177}
    };

    private static double grown(double age, double[] p) {
        return p[0] / (1 + Math.exp(-(age - p[1]) / p[2]));
    }

    private static double[][] identity(int size) {
        double[][] identity = new double[size][size];
        for (int i = 0; i < size; i++) {
            identity[i][i] = 1;
        }
        return identity;
    }

    private static List<ResponseCell> trees(double sigma) {
        List<ResponseCell> cells = new ArrayList<>();
        for (int tree = 0; tree < TREES.length; tree++) {
            for (int i = 0; i < AGES.length; i++) {
                double age = AGES[i];
                cells.add(new ResponseCell(
                        "tree " + (tree + 1),
                        "age " + i,
                        new double[] {TREES[tree][i]},
                        new double[][] {{1 / (sigma * sigma)}},
                        identity(3),
                        p -> new double[] {grown(age, p)}));
            }
        }
        return cells;
    }

    /**
     * Logistic growth with a random asymptote; the residual is held at 8.20580935697058, because repeats give it in this model.
     *
     * <p>Source: the same alternation written in R 4.2.2 with dense covariance matrices and optimize(): 191.16781259, 723.19613533,
     * 344.62015672, standard deviation 35.28338792, errors 17.12957754, 35.26043264, 27.19586529, trees −29.496931546, 31.663916535,
     * −37.116636106, 40.143931359, −5.194280242. nlme 3.1-162 (REML) differs in how it takes the degrees of freedom: 191.0490441,
     * 722.5561414, 344.1626119 and 32.9252471.
     *
     * @source LindstromBates1990
     * @source Pinheiro2000
     * @source RCoreTeam2022
     */
    @Test
    void growsOrangeTrees() {
        NonlinearFit fit = new NonlinearMixedModel(new int[] {0}, new int[0], new double[] {50, 100, 100})
                .fit(trees(8.20580935697058), new double[] {190, 720, 350})
                .orThrow();

        double[] coefficients = {191.16781259, 723.19613533, 344.62015672};
        double[] errors = {17.12957754, 35.26043264, 27.19586529};
        double[] nlme = {191.0490441, 722.5561414, 344.1626119};
        for (int i = 0; i < 3; i++) {
            assertThat(fit.coefficients()[i]).isEqualTo(coefficients[i], within(1e-4 * errors[i]));
            assertThat(fit.standardError(i)).isEqualTo(errors[i], within(1e-4 * errors[i]));
            assertThat(fit.coefficients()[i]).isEqualTo(nlme[i], within(0.02 * errors[i]));
        }
        assertThat(fit.roomDeviations()[0]).isEqualTo(35.28338792, within(4e-3));
        double[] trees = {-29.496931546, 31.663916535, -37.116636106, 40.143931359, -5.194280242};
        for (int i = 0; i < trees.length; i++) {
            assertThat(fit.rooms().get(i).effects()[0]).isEqualTo(trees[i], within(4e-3));
        }
    }

    /** The criterion's gradient against central differences of its value. */
    @Test
    void slopesAsItsDifferencesDo() {
        Random random = new Random(3);
        List<List<double[][]>> rooms = new ArrayList<>();
        for (int room = 0; room < 4; room++) {
            List<double[][]> sessions = new ArrayList<>();
            for (int session = 0; session < 3; session++) {
                sessions.add(products(random));
            }
            rooms.add(sessions);
        }
        LinearisedCriterion criterion = new LinearisedCriterion(
                rooms, new int[] {0, 1}, new int[] {0, 2}, new double[] {0.4, 0.5, 0.6, 0.7}, 3);
        double[] at = {0.8, -0.5, 1.1, 0.3};
        double[] gradient = new double[4];
        criterion.evaluate(at, gradient);
        for (int i = 0; i < 4; i++) {
            double[] up = at.clone();
            double[] down = at.clone();
            up[i] += 1e-5;
            down[i] -= 1e-5;
            double slope = (criterion.evaluate(up, new double[4]) - criterion.evaluate(down, new double[4])) / 2e-5;
            assertThat(gradient[i]).isEqualTo(slope, within(1e-6 * Math.max(1, Math.abs(slope))));
        }
    }

    private static double[][] products(Random random) {
        double[][] products = new double[4][4];
        for (int row = 0; row < 6; row++) {
            double[] values = {1, random.nextGaussian(), random.nextGaussian(), 2 * random.nextGaussian()};
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    products[i][j] += values[i] * values[j];
                }
            }
        }
        return products;
    }

    @Test
    void refusesCoefficientsThatOneNumberCannotTellApart() {
        List<ResponseCell> cells = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            cells.add(new ResponseCell(
                    "room " + i % 3,
                    "session " + i,
                    new double[] {5.0 + 0.1 * i},
                    new double[][] {{1}},
                    identity(2),
                    p -> new double[] {p[0] * p[1]}));
        }
        Answer<NonlinearFit> answer =
                new NonlinearMixedModel(new int[] {0}, new int[0], new double[] {1, 1}).fit(cells, new double[] {2, 2});

        assertThat(answer).isInstanceOf(Answer.Refused.class);
    }
}
