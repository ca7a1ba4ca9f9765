package org.tableweather.analyzers.standard.statistics.measurement;

import java.util.OptionalDouble;

/** {@code a + b/(c + ζ)} by least squares: for each c a straight line in 1/(c + ζ), c by golden section. */
final class RationalCurve {

    private static final double NEAREST = 1.05;
    private static final double FARTHEST = 1e4;
    private static final double SECTION = (Math.sqrt(5) - 1) / 2;
    private static final int STEPS = 120;

    private final double[] factors;
    private final double[] values;

    private RationalCurve(double[] factors, double[] values) {
        this.factors = factors;
        this.values = values;
    }

    /** The pole must lie beyond ζ = −1, so c is sought above 1, on a logarithmic scale of c − 1. */
    static OptionalDouble atNoError(double[] factors, double[] values) {
        RationalCurve curve = new RationalCurve(factors, values);
        double low = StrictMath.log(NEAREST - 1);
        double high = StrictMath.log(FARTHEST);
        for (int i = 0; i < STEPS; i++) {
            double left = high - SECTION * (high - low);
            double right = low + SECTION * (high - low);
            if (curve.line(left).misfit < curve.line(right).misfit) {
                high = right;
            } else {
                low = left;
            }
        }
        double c = (low + high) / 2;
        boolean atPole = StrictMath.exp(c) + 1 < NEAREST * 1.001;
        return atPole ? OptionalDouble.empty() : OptionalDouble.of(curve.line(c).atNoError);
    }

    private record Line(double misfit, double atNoError) {}

    private Line line(double logDistance) {
        double c = 1 + StrictMath.exp(logDistance);
        double n = factors.length;
        double sum = 0;
        double total = 0;
        for (int i = 0; i < n; i++) {
            sum += 1 / (c + factors[i]) / n;
            total += values[i] / n;
        }
        double squares = 0;
        double products = 0;
        for (int i = 0; i < n; i++) {
            double apart = 1 / (c + factors[i]) - sum;
            squares += apart * apart;
            products += apart * (values[i] - total);
        }
        double b = products / squares;
        double misfit = 0;
        for (int i = 0; i < n; i++) {
            double rest = values[i] - total - b * (1 / (c + factors[i]) - sum);
            misfit += rest * rest;
        }
        return new Line(misfit, total + b * (1 / (c - 1) - sum));
    }
}
