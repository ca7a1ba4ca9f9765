package org.tableweather.analyzers.standard.catalogue.path;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;
import org.tableweather.analyzers.standard.catalogue.path.UnknownDirection.Group;

/**
 * Landings drawn from all that is not known, in one climate or in two with the same rail, room and cloth. The rail and the room are drawn
 * with the heavier tails of Student's t on rooms less one degrees of freedom, because their variances are estimated from so many
 * rooms.
 *
 * @source JCGM101
 */
final class LandingDraws {

    /** More degrees of freedom than this are as good as all. */
    private static final int MANY = 60;

    private final PathModel model;
    private final List<UnknownDirection> shared;
    private final List<UnknownDirection> session;
    private final RandomGenerator random;

    LandingDraws(PathModel model, long seed) {
        this.model = model;
        shared = model.shared();
        session = model.session();
        random = new Well19937c(seed);
    }

    /**
     * Draws of some quantity, in order of size.
     *
     * @param values the draws that landed, sorted
     * @param lost how many did not
     */
    record Sorted(double[] values, int lost) {

        static Sorted of(double[] drawn) {
            double[] values = Arrays.stream(drawn)
                    .filter(each -> !Double.isNaN(each))
                    .sorted()
                    .toArray();
            return new Sorted(values, drawn.length - values.length);
        }

        /** The value below which a share of the draws lies, between the two nearest. */
        double quantile(double share) {
            double at = share * (values.length - 1);
            int below = (int) at;
            int above = Math.min(below + 1, values.length - 1);
            return values[below] + (at - below) * (values[above] - values[below]);
        }

        /** The share of draws below a value. */
        double shareBelow(double value) {
            int at = Arrays.binarySearch(values, value);
            return (at >= 0 ? at + 0.5 : -at - 1.0) / values.length;
        }

        double mean() {
            return Arrays.stream(values).sum() / values.length;
        }

        double deviation() {
            double mean = mean();
            double squares = Arrays.stream(values)
                    .map(each -> (each - mean) * (each - mean))
                    .sum();
            return Math.sqrt(squares / (values.length - 1));
        }
    }

    /**
     * Draws in two climates.
     *
     * @param from landings in the first, without session and attempt
     * @param to in the second
     * @param drift differences
     * @param attempt differences between one attempt in each
     */
    record Two(Sorted from, Sorted to, Sorted drift, Sorted attempt) {}

    Two two(ModelClimate from, ModelClimate to, double sessionFrom, double sessionTo, double attemptSd, int count) {
        double[][] drawn = new double[4][count];
        double noise = Math.sqrt(sessionFrom * sessionFrom + sessionTo * sessionTo + 2 * attemptSd * attemptSd);
        for (int i = 0; i < count; i++) {
            double[] cloth = model.cloth.clone();
            double[] rail = drawn(shared, cloth);
            drawn[0][i] = model.landing(from, rail, cloth);
            drawn[1][i] = model.landing(to, rail, cloth);
            drawn[2][i] = drawn[1][i] - drawn[0][i];
            drawn[3][i] = drawn[2][i] + noise * random.nextGaussian();
        }
        return new Two(Sorted.of(drawn[0]), Sorted.of(drawn[1]), Sorted.of(drawn[2]), Sorted.of(drawn[3]));
    }

    /** Single attempts of one session each. */
    Sorted attempts(ModelClimate at, double attemptSd, int count) {
        double[] drawn = new double[count];
        for (int i = 0; i < count; i++) {
            double[] cloth = model.cloth.clone();
            double[] rail = drawn(shared, cloth);
            for (UnknownDirection direction : session) {
                move(rail, direction.rail(), random.nextGaussian());
            }
            drawn[i] = model.landing(at, rail, cloth) + attemptSd * random.nextGaussian();
        }
        return Sorted.of(drawn);
    }

    private double[] drawn(List<UnknownDirection> directions, double[] cloth) {
        double[] rail = model.coefficients.clone();
        double heavier = heavier();
        for (UnknownDirection direction : directions) {
            double z = random.nextGaussian();
            if (direction.group() == Group.CLOTH) {
                cloth[direction.ofCloth()] = model.knownCloth.value(direction.ofCloth(), z);
            } else {
                move(rail, direction.rail(), heavier * z);
            }
        }
        return rail;
    }

    private static void move(double[] rail, double[] direction, double by) {
        for (int i = 0; i < rail.length; i++) {
            rail[i] += by * direction[i];
        }
    }

    /** {@code √(df/χ²)}. */
    private double heavier() {
        int df = (int) model.df();
        if (df > MANY) {
            return 1;
        }
        double square = 0;
        for (int i = 0; i < df; i++) {
            double z = random.nextGaussian();
            square += z * z;
        }
        return Math.sqrt(df / square);
    }
}
