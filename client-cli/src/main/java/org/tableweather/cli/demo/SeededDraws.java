package org.tableweather.cli.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Chance that repeats itself: the bits come from {@link SplittableRandom}, whose algorithm is fixed; normal deviates are
 * made here (Box and Muller) with {@link StrictMath}, so that every Java platform draws the same.
 *
 * @source BoxMuller1958
 */
final class SeededDraws {
    private final SplittableRandom bits;

    private SeededDraws(SplittableRandom bits) {
        this.bits = bits;
    }

    static SeededDraws of(long seed) {
        return new SeededDraws(new SplittableRandom(seed));
    }

    /** An independent stream; this one moves on. */
    SeededDraws split() {
        return new SeededDraws(bits.split());
    }

    /** Uniform in [low, high). */
    double uniform(double low, double high) {
        return low + (high - low) * bits.nextDouble();
    }

    /** Normal with mean 0. */
    double normal(double sd) {
        double radius = StrictMath.sqrt(-2 * StrictMath.log(1 - bits.nextDouble()));
        return sd * radius * StrictMath.cos(2 * Math.PI * bits.nextDouble());
    }

    /** The same elements in an order drawn by lot. */
    <T> List<T> shuffled(List<T> elements) {
        List<T> order = new ArrayList<>(elements);
        for (int last = order.size() - 1; last > 0; last--) {
            int chosen = bits.nextInt(last + 1);
            T kept = order.set(chosen, order.get(last));
            order.set(last, kept);
        }
        return order;
    }
}
