package org.tableweather.analyzers.standard.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.hipparchus.random.RandomDataGenerator;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;

/**
 * Parametric bootstrap of a fit without its trials: each session's mean and cross-products of the response are drawn from
 * their own distribution, and the model is fitted anew.
 *
 * <pre>
 * u ~ N(0, Σ),  w ~ N(0, v),  ȳ = x̄'b + z̄'u + w + N(0, s²/n)
 * M[x,y] = M[x,x] β + g,  g ~ N(0, s² M[x,x]),  β = b and u on its columns
 * M[y,y] = β'M[x,x]β + 2 β'g + s² (χ²_rank + χ²_{n − 1 − rank}),  the first from g itself
 * </pre>
 *
 * <p>One generator for each replicate, so that the draws do not depend on how replicates are spread over threads.
 *
 * @param replicates at least 1
 * @param seed of all draws
 * @source Davison1997
 */
public record NestedBootstrap(int replicates, long seed) {

    private static final double LEAST_SHARE = 1e-10;
    private static final long GOLDEN_RATIO = 0x9E3779B97F4A7C15L;

    /**
     * Estimates of the replicates that could be fitted.
     *
     * @param values for each contrast ascending
     * @param failed replicates without a fit
     */
    public record Draws(List<double[]> values, int failed) {

        /** A quantile of a contrast, interpolated. */
        public double quantile(int contrast, double share) {
            double[] sorted = values.get(contrast);
            double at = share * (sorted.length - 1);
            int below = (int) Math.min(Math.floor(at), Math.max(0, sorted.length - 2));
            int above = Math.min(below + 1, sorted.length - 1);
            return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
        }

        /** Standard deviation of a contrast. */
        public double deviation(int contrast) {
            double[] sorted = values.get(contrast);
            double mean = Arrays.stream(sorted).average().orElse(Double.NaN);
            double squares = Arrays.stream(sorted)
                    .map(value -> (value - mean) * (value - mean))
                    .sum();
            return Math.sqrt(squares / (sorted.length - 1));
        }
    }

    /**
     * Draws and refits.
     *
     * @param model that was fitted
     * @param fit what is taken for the truth
     * @param rooms that it was fitted to
     * @param rows contrasts over all given columns
     */
    public Draws run(NestedModel model, NestedFit fit, List<RoomSessions> rooms, double[][] rows) {
        return run(model, fit, rooms, rows, made -> {});
    }

    /**
     * Draws and refits.
     *
     * @param counter hears from any thread how many replicates are made; what it throws ends the rest
     */
    public Draws run(NestedModel model, NestedFit fit, List<RoomSessions> rooms, double[][] rows, IntConsumer counter) {
        Truth truth = new Truth(fit, rooms);
        Counted made = new Counted();
        List<double[]> drawn = IntStream.range(0, replicates)
                .parallel()
                .mapToObj(replicate -> {
                    counter.accept(made.next());
                    return refitted(model, truth.draw(generator(replicate)), rows);
                })
                .toList();
        List<double[]> sound =
                drawn.stream().filter(values -> values.length > 0).toList();
        List<double[]> values = new ArrayList<>();
        for (int contrast = 0; contrast < rows.length; contrast++) {
            int at = contrast;
            values.add(sound.stream().mapToDouble(all -> all[at]).sorted().toArray());
        }
        return new Draws(values, replicates - sound.size());
    }

    private RandomGenerator generator(int replicate) {
        return new Well19937c(seed * GOLDEN_RATIO + replicate);
    }

    private static double[] refitted(NestedModel model, List<RoomSessions> rooms, double[][] rows) {
        if (!(model.fit(rooms) instanceof NestedFit again) || !again.converged()) {
            return new double[0];
        }
        return Arrays.stream(rows)
                .mapToDouble(row -> again.value(again.reduced(row)))
                .toArray();
    }

    /** Counts for many threads. */
    private static final class Counted {
        private int count;

        synchronized int next() {
            return count++;
        }
    }

    /** What replicates are drawn from. */
    private static final class Truth {

        private final NestedFit fit;
        private final List<RoomSessions> rooms;
        private final double[] coefficients;
        private final double[][] factor;
        private final double sigma;
        private final double session;

        Truth(NestedFit fit, List<RoomSessions> rooms) {
            this.fit = fit;
            this.rooms = rooms;
            int given = rooms.get(0).sessions().get(0).columns();
            coefficients = new double[given];
            for (int column = 0; column < given; column++) {
                double[] row = new double[given];
                row[column] = 1;
                coefficients[column] = fit.value(fit.reduced(row));
            }
            factor = semidefiniteFactor(fit.roomCovariance());
            sigma = Math.sqrt(fit.sigma2());
            session = Math.sqrt(fit.sessionVariance().orElse(0));
        }

        List<RoomSessions> draw(RandomGenerator random) {
            RandomDataGenerator chiSquare = RandomDataGenerator.of(random);
            List<RoomSessions> drawn = new ArrayList<>();
            for (RoomSessions room : rooms) {
                double[] beta = coefficients.clone();
                double[] normal = normals(random, factor.length);
                for (int u = 0; u < factor.length; u++) {
                    for (int k = 0; k <= u; k++) {
                        beta[fit.random().get(u)] += factor[u][k] * normal[k];
                    }
                }
                List<Moments> sessions = new ArrayList<>();
                for (Moments part : room.sessions()) {
                    sessions.add(draw(part, beta, random, chiSquare));
                }
                drawn.add(new RoomSessions(room.key(), sessions));
            }
            return drawn;
        }

        private Moments draw(Moments part, double[] beta, RandomGenerator random, RandomDataGenerator chiSquare) {
            int response = part.columns() - 1;
            double[] mean = part.mean();
            mean[response] =
                    beta[0] + session * random.nextGaussian() + sigma / Math.sqrt(part.n()) * random.nextGaussian();
            for (int i = 0; i < response; i++) {
                mean[response] += beta[i + 1] * mean[i];
            }
            double[][] within = new double[response][response];
            for (int i = 0; i < response; i++) {
                for (int j = 0; j < response; j++) {
                    within[i][j] = part.cross(i, j);
                }
            }
            double[] cross = part.cross();
            int last = Moments.packed(response, 0);
            cross[last + response] = fillCross(cross, last, within, beta, part.n(), random, chiSquare);
            return new Moments(part.n(), mean, cross);
        }

        /** Writes M[x,y]; returns M[y,y]. */
        private double fillCross(
                double[] cross,
                int last,
                double[][] within,
                double[] beta,
                long n,
                RandomGenerator random,
                RandomDataGenerator chiSquare) {
            double[][] lower = semidefiniteFactor(within);
            double squares = 0;
            int rank = 0;
            double[] noise = new double[within.length];
            for (int k = 0; k < within.length; k++) {
                if (lower[k][k] > 0) {
                    double draw = sigma * random.nextGaussian();
                    rank++;
                    squares += draw * draw;
                    for (int i = k; i < within.length; i++) {
                        noise[i] += lower[i][k] * draw;
                    }
                }
            }
            for (int i = 0; i < within.length; i++) {
                double explained = 0;
                for (int j = 0; j < within.length; j++) {
                    explained += within[i][j] * beta[j + 1];
                }
                cross[last + i] = explained + noise[i];
                squares += beta[i + 1] * (explained + 2 * noise[i]);
            }
            long outside = n - 1 - rank;
            return Math.max(0, outside > 0 ? squares + sigma * sigma * chiSquare.nextGamma(outside / 2.0, 2) : squares);
        }

        private static double[] normals(RandomGenerator random, int count) {
            double[] normals = new double[count];
            for (int i = 0; i < count; i++) {
                normals[i] = random.nextGaussian();
            }
            return normals;
        }
    }

    /** L of LL'; a column of which next to nothing is its own is left zero. */
    private static double[][] semidefiniteFactor(double[][] matrix) {
        int size = matrix.length;
        double[][] lower = new double[size][size];
        for (int j = 0; j < size; j++) {
            double own = matrix[j][j];
            for (int k = 0; k < j; k++) {
                own -= lower[j][k] * lower[j][k];
            }
            if (!(own > LEAST_SHARE * matrix[j][j])) {
                continue;
            }
            lower[j][j] = Math.sqrt(own);
            for (int i = j + 1; i < size; i++) {
                double rest = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    rest -= lower[i][k] * lower[j][k];
                }
                lower[i][j] = rest / lower[j][j];
            }
        }
        return lower;
    }
}
