package org.tableweather.analyzers.standard.catalogue.path;

import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * What brings the landing in the second climate back to where it was in the first: a change of the aim, of the speed or of the side spin, each
 * by itself, the smallest that does. Searched on a grid, so that of several changes the smallest is found, then halved to 1e-9.
 */
final class PathSolutions {

    private static final double FARTHEST_AIM_DIA = 1.5;
    private static final int AIM_STEPS = 60;
    private static final double SLOWEST = 0.6;
    private static final double FASTEST = 1.6;
    private static final int SPEED_STEPS = 40;
    private static final double MOST_SPIN_RPS = 10;
    private static final int SPIN_STEPS = 40;
    private static final int HALVINGS = 60;
    private static final double SLOPE_STEP = 1e-3;

    private final PathModel model;
    private final ModelClimate to;
    private final double wantedDia;

    PathSolutions(PathModel model, ModelClimate from, ModelClimate to) {
        this.model = model;
        this.to = to;
        wantedDia = model.trace(from).landingDia();
    }

    /**
     * A change.
     *
     * @param value by how much, in its unit
     * @param diaPer how far the landing moves per unit there
     */
    record Change(double value, double diaPer) {}

    /** Of the aim along the first rail, diamonds. */
    Optional<Change> aim() {
        return smallest(model.pattern::aimed, -FARTHEST_AIM_DIA, FARTHEST_AIM_DIA, AIM_STEPS);
    }

    /** Of the speed, m/s. */
    Optional<Change> speed() {
        double now = model.pattern.speedMps();
        return smallest(by -> model.pattern.at(now + by), (SLOWEST - 1) * now, (FASTEST - 1) * now, SPEED_STEPS);
    }

    /** Of the side spin, revolutions a second. */
    Optional<Change> spin() {
        double now = model.pattern.sideSpinRps();
        return smallest(by -> model.pattern.spun(now + by), -MOST_SPIN_RPS, MOST_SPIN_RPS, SPIN_STEPS);
    }

    static String reach() {
        return "aim within 1.5 diamonds, speed from 60 to 160 %, side spin within 10 revolutions a second";
    }

    private Optional<Change> smallest(DoubleFunction<Pattern> changed, double low, double high, int steps) {
        DoubleUnaryOperator off = by -> model.trace(changed.apply(by), to).landingDia() - wantedDia;
        Optional<Double> best = Optional.empty();
        double before = low;
        double offBefore = off.applyAsDouble(low);
        for (int i = 1; i <= steps; i++) {
            double at = low + (high - low) * i / steps;
            double offAt = off.applyAsDouble(at);
            if (offBefore * offAt <= 0) {
                double root = root(off, before, at, offBefore);
                // a jump between two ways also changes sign
                boolean real = Math.abs(off.applyAsDouble(root)) < 1e-6;
                if (real && (best.isEmpty() || Math.abs(root) < Math.abs(best.get()))) {
                    best = Optional.of(root);
                }
            }
            before = at;
            offBefore = offAt;
        }
        return best.map(root -> new Change(
                root,
                (off.applyAsDouble(root + SLOPE_STEP) - off.applyAsDouble(root - SLOPE_STEP)) / (2 * SLOPE_STEP)));
    }

    private static double root(DoubleUnaryOperator off, double from, double to, double offFrom) {
        double low = from;
        double high = to;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            boolean same = off.applyAsDouble(middle) * offFrom > 0;
            low = same ? middle : low;
            high = same ? high : middle;
        }
        return (low + high) / 2;
    }
}
