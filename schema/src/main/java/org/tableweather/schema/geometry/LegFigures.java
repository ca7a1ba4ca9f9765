package org.tableweather.schema.geometry;

import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.Rail;

/**
 * Figures of the legs of a path, each with its standard uncertainty by the law of propagation.
 *
 * <p>Marks of rail contacts are already held to their rail's line: the coordinate across the rail is known from the table,
 * not from the mark, and so carries no marking error.
 *
 * @source JCGM100
 */
final class LegFigures {

    private final List<Mark> marks;
    private final MarkCovariance covariance;
    private final double timeS;

    LegFigures(MarkedPath held) {
        this.marks = held.marks();
        this.covariance = held.covariance();
        this.timeS = held.timeS();
    }

    /** Angle of the leg that ends at a rail contact, degrees from the rail's normal, ≥ 0. */
    Measured approachDeg(int contact, Rail rail) {
        int sense = -new RailFrame(rail).inward();
        return angleDeg(contact - 1, rail, sense, travel(contact - 1, rail));
    }

    /** Angle of the leg that begins at a rail contact, positive when it runs on in the direction of arrival. */
    Measured reboundDeg(int contact, Rail rail, int arrival) {
        int onward = arrival == 0 ? travel(contact, rail) : arrival;
        return angleDeg(contact, rail, new RailFrame(rail).inward(), onward);
    }

    private Measured angleDeg(int from, Rail rail, int sense, int sign) {
        RailFrame frame = new RailFrame(rail);
        double along = along(frame, from + 1) - along(frame, from);
        // A rest in the jaws of a pocket may lie behind the line of the rail: it then left along the rail.
        double across = Math.max(0, sense * (across(frame, from + 1) - across(frame, from)));
        double squared = along * along + across * across;
        double[] gradient = gradient();
        // θ = atan2(t, n): ∂θ/∂t = n/(t² + n²), ∂θ/∂n = −t/(t² + n²)
        spread(gradient, alongIndex(frame, from), across / squared);
        spread(gradient, acrossIndex(frame, from), -sense * along / squared);
        double radians = sign < 0 ? -Math.atan2(along, across) : Math.atan2(along, across);
        return measured(Math.toDegrees(radians), gradient, 180 / Math.PI);
    }

    /** Mean speed over the leg to the next mark, m/s: empty unless both ends have times. */
    Optional<Measured> speedMps(int from) {
        double seconds = marks.get(from + 1).timeS() - marks.get(from).timeS();
        if (Double.isNaN(seconds)) {
            return Optional.empty();
        }
        Measured length = lengthM(from, from + 1);
        double speed = length.value() / seconds;
        double byTime = Math.sqrt(2) * timeS * speed / seconds;
        return Optional.of(new Measured(speed, Math.hypot(length.standardUncertainty() / seconds, byTime)));
    }

    /** The sum of the legs between two marks, m. */
    Measured lengthM(int first, int last) {
        double sum = 0;
        double[] gradient = gradient();
        for (int i = first; i < last; i++) {
            TablePoint a = marks.get(i).at();
            TablePoint b = marks.get(i + 1).at();
            double length = a.distanceM(b);
            spread(gradient, 2 * i, (b.xM() - a.xM()) / length);
            spread(gradient, 2 * i + 1, (b.yM() - a.yM()) / length);
            sum += length;
        }
        return measured(sum, gradient, 1);
    }

    /** Where the leg from a mark meets the landing line: {@code t = aₜ + s·(bₜ − aₜ)}, {@code s = (N − aₙ)/(bₙ − aₙ)}. */
    Optional<Landing> landing(int from, LandingLine line, TableSize table) {
        RailFrame frame = new RailFrame(line.rail());
        double travel = along(frame, from + 1) - along(frame, from);
        double rise = across(frame, from + 1) - across(frame, from);
        double share = (table.lineM(line.rail()) - across(frame, from)) / rise;
        if (!(share > 0 && Double.isFinite(share))) {
            return Optional.empty();
        }
        double[] gradient = gradient();
        gradient[alongIndex(frame, from)] = 1 - share;
        gradient[alongIndex(frame, from + 1)] = share;
        gradient[acrossIndex(frame, from)] = travel * (share - 1) / rise;
        gradient[acrossIndex(frame, from + 1)] = -travel * share / rise;
        double scale = line.longSign(travel) / table.diamondAlongM(line.rail());
        double place = along(frame, from) + share * travel;
        Measured offset = measured(scale * (place - line.targetM()), gradient, Math.abs(scale));
        return Optional.of(new Landing(offset, (share - 1) * Math.hypot(travel, rise)));
    }

    /** Direction of travel along a rail over the leg from a mark: −1, 0 or +1. */
    int travel(int from, Rail rail) {
        RailFrame frame = new RailFrame(rail);
        return (int) Math.signum(along(frame, from + 1) - along(frame, from));
    }

    private Measured measured(double value, double[] gradient, double scale) {
        for (int i = 0; i < marks.size(); i++) {
            if (marks.get(i).isRail()) {
                gradient[acrossIndex(new RailFrame(marks.get(i).rail().orElseThrow()), i)] = 0;
            }
        }
        return new Measured(value, scale * Math.sqrt(covariance.variance(gradient)));
    }

    private double[] gradient() {
        return new double[2 * marks.size()];
    }

    /** A figure that depends on the difference of a coordinate between a mark and the next. */
    private static void spread(double[] gradient, int index, double derivative) {
        gradient[index] -= derivative;
        gradient[index + 2] += derivative;
    }

    private double along(RailFrame frame, int mark) {
        return frame.along(marks.get(mark).at());
    }

    private double across(RailFrame frame, int mark) {
        return frame.across(marks.get(mark).at());
    }

    private static int alongIndex(RailFrame frame, int mark) {
        return frame.isShort() ? 2 * mark + 1 : 2 * mark;
    }

    private static int acrossIndex(RailFrame frame, int mark) {
        return frame.isShort() ? 2 * mark : 2 * mark + 1;
    }
}
