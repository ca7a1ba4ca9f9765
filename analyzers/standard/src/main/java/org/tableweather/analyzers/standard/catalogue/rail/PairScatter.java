package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.List;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.rail.RailPool.Used;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Column;
import org.tableweather.analyzers.standard.statistics.Moments;

/**
 * How attempts under one condition scatter, pooled over all conditions, with what the approach angle does to the rebound taken out.
 *
 * @param angleSd of the rebound angle, degrees
 * @param ratioSd of the ratio of speeds; NaN when it was not measured
 * @param correlation of the two; 0 when one was not measured
 * @param df degrees of freedom of the angle's
 */
record PairScatter(double angleSd, double ratioSd, double correlation, long df) {

    /** Scatter of the ratio where it is to be told what measuring it would give: common practice, no source. */
    static final double ASSUMED_RATIO_SD = 0.03;

    private static final double LEAST = 1e-9;

    /** By a rail of restitution and friction (e, log μ) near the truth; empty when attempts do not repeat or do not scatter. */
    static Optional<PairScatter> of(List<Used> used, RailDesign design, double[] parameters) {
        double angle = 0;
        double ratio = 0;
        double both = 0;
        long angleDf = 0;
        long ratioDf = 0;
        for (Used each : used) {
            Moments moments = each.cell().moments();
            RailResponse response = design.response(each);
            double a = response.angleSlope(parameters);
            double spread = cross(moments, Column.APPROACH_DEG, Column.APPROACH_DEG);
            angle += cross(moments, Column.REBOUND_DEG, Column.REBOUND_DEG)
                    - 2 * a * cross(moments, Column.APPROACH_DEG, Column.REBOUND_DEG)
                    + a * a * spread;
            angleDf += moments.n() - 1;
            if (each.withRatio()) {
                double r = response.ratioSlope(parameters);
                ratio += cross(moments, Column.SPEED_RATIO, Column.SPEED_RATIO)
                        - 2 * r * cross(moments, Column.APPROACH_DEG, Column.SPEED_RATIO)
                        + r * r * spread;
                both += cross(moments, Column.REBOUND_DEG, Column.SPEED_RATIO)
                        - a * cross(moments, Column.APPROACH_DEG, Column.SPEED_RATIO)
                        - r * cross(moments, Column.APPROACH_DEG, Column.REBOUND_DEG)
                        + a * r * spread;
                ratioDf += moments.n() - 1;
            }
        }
        if (angleDf < 1 || !(angle > LEAST) || ratioDf > 0 && !(ratio > LEAST * LEAST)) {
            return Optional.empty();
        }
        double angleSd = Math.sqrt(angle / angleDf);
        double ratioSd = ratioDf > 0 ? Math.sqrt(ratio / ratioDf) : Double.NaN;
        double correlation = ratioDf > 0 ? both / ratioDf / (angleSd * ratioSd) : 0;
        return Optional.of(new PairScatter(angleSd, ratioSd, Math.max(-0.99, Math.min(0.99, correlation)), angleDf));
    }

    private static double cross(Moments moments, Column i, Column j) {
        return moments.cross(i.ordinal(), j.ordinal());
    }

    /** Inverse covariance of the means of n attempts. */
    double[][] weights(long n, boolean withRatio) {
        if (!withRatio) {
            return new double[][] {{n / (angleSd * angleSd)}};
        }
        double ratio = Double.isNaN(ratioSd) ? ASSUMED_RATIO_SD : ratioSd;
        double scale = n / (1 - correlation * correlation);
        double cross = -scale * correlation / (angleSd * ratio);
        return new double[][] {{scale / (angleSd * angleSd), cross}, {cross, scale / (ratio * ratio)}};
    }
}
