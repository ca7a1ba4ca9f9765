package org.tableweather.analyzers.standard.climate;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.Calibration;
import org.tableweather.schema.record.Instrument;

/**
 * Correction of one quantity of one instrument, from its calibration points, and what is then left in doubt.
 *
 * <p>The correction of a reading x is a weighted mean of the corrections found at the points, {@code c(x) = Σ ℓᵢ(x) cᵢ}: equal weights
 * for an offset, the straight line through two points, or the least-squares line through more. Its variance is {@code Σ ℓᵢ² uᵢ²}
 * over salts, whose errors are independent, plus {@code (Σ ℓᵢ uᵢ)²} over points read against one reference instrument, plus
 * {@code Σ ℓᵢ²} times the reading's own resolution; for a line through more than two points the larger of this and what the scatter
 * about the line says.
 *
 * @source JCGM100
 */
public final class InstrumentCorrection {
    /** Points taken within this many days belong to one calibration (common practice, no source). */
    static final long CAMPAIGN_DAYS = 30;

    private final Quantity quantity;
    private final List<CalibrationPoint> points;
    private final OptionalDouble statedAccuracy;
    private final double resolution;
    private final double low;
    private final double high;

    private InstrumentCorrection(
            Quantity quantity, List<CalibrationPoint> points, OptionalDouble statedAccuracy, double resolution) {
        this.quantity = quantity;
        this.points = List.copyOf(points);
        this.statedAccuracy = statedAccuracy;
        this.resolution = resolution;
        this.low = points.stream().mapToDouble(CalibrationPoint::reading).min().orElse(Double.NaN);
        this.high = points.stream().mapToDouble(CalibrationPoint::reading).max().orElse(Double.NaN);
    }

    /** How readings are corrected. */
    public enum Kind {
        /** Not at all: no calibration; the stated accuracy stands. */
        NONE,
        /** By one number, from one point or points close together. */
        OFFSET,
        /** By the straight line through two points. */
        TWO_POINT,
        /** By the least-squares line through more. */
        LINE
    }

    /**
     * From what is known of the instrument: the newest calibration up to that day, all its points of the 30 days before its last; else the
     * earliest one after.
     *
     * @param instrument with accuracy, resolution and calibrations as far as stated
     * @param quantity which of its readings
     * @param on day of the session
     */
    public static InstrumentCorrection of(Instrument instrument, Quantity quantity, LocalDate on) {
        List<Calibration> all =
                instrument.calibrations().stream().filter(quantity::isOf).toList();
        return of(
                quantity,
                campaign(all, on).stream().map(CalibrationPoint::of).toList(),
                quantity.statedAccuracy(instrument),
                quantity.resolution(instrument));
    }

    /**
     * From calibration points.
     *
     * @param points none, one or more
     * @param statedAccuracy ± of the maker, taken as a rectangular half-width; empty when not stated
     * @param resolution smallest step of the display; empty when not stated
     */
    public static InstrumentCorrection of(
            Quantity quantity,
            List<CalibrationPoint> points,
            OptionalDouble statedAccuracy,
            OptionalDouble resolution) {
        return new InstrumentCorrection(quantity, points, statedAccuracy, resolution.orElse(0));
    }

    /** How readings are corrected. */
    public Kind kind() {
        if (points.isEmpty()) {
            return Kind.NONE;
        }
        if (points.size() == 1 || high - low < quantity.nearby()) {
            return Kind.OFFSET;
        }
        return points.size() == 2 ? Kind.TWO_POINT : Kind.LINE;
    }

    /**
     * The reading, corrected.
     *
     * @param raw as read, °C or %
     * @throws IllegalArgumentException if it is not finite, or a humidity outside 0 to 100 %
     */
    public CorrectedReading apply(double raw) {
        if (quantity == Quantity.HUMIDITY) {
            MoistAir.HUMIDITY.require(raw);
        }
        double[] weights = weights(raw);
        double correction = 0;
        for (int i = 0; i < weights.length; i++) {
            correction += weights[i] * points.get(i).correction();
        }
        double value = quantity == Quantity.HUMIDITY ? Math.min(100, Math.max(0, raw + correction)) : raw + correction;
        OptionalDouble known = knownVariance(weights);
        double scatter = kind() == Kind.LINE ? line().correctionAt(raw).standardUncertainty() : 0;
        boolean byScatter = known.isPresent() && scatter * scatter > known.getAsDouble();
        OptionalDouble uncertainty = known.isPresent()
                ? OptionalDouble.of(Math.sqrt(Math.max(known.getAsDouble(), scatter * scatter) + ownVariance()))
                : OptionalDouble.empty();
        double freedom = byScatter ? points.size() - 2.0 : Double.POSITIVE_INFINITY;
        return new CorrectedReading(raw, value, uncertainty, freedom, kind(), isExtrapolated(raw));
    }

    /** Weights of the points' corrections at this reading; they add up to 1. */
    private double[] weights(double raw) {
        int n = points.size();
        double[] weights = new double[n];
        double mean =
                points.stream().mapToDouble(CalibrationPoint::reading).average().orElse(0);
        double spread = points.stream()
                .mapToDouble(p -> (p.reading() - mean) * (p.reading() - mean))
                .sum();
        boolean sloped = kind() == Kind.TWO_POINT || kind() == Kind.LINE;
        for (int i = 0; i < n; i++) {
            double tilt = sloped ? (raw - mean) * (points.get(i).reading() - mean) / spread : 0;
            weights[i] = 1.0 / n + tilt;
        }
        return weights;
    }

    /** Variance of the correction from what is known of references and resolution; empty when that of a reference is not known. */
    private OptionalDouble knownVariance(double[] weights) {
        if (points.isEmpty()) {
            return statedAccuracy.isPresent()
                    ? OptionalDouble.of(square(rectangular(statedAccuracy.getAsDouble())))
                    : statedAccuracy;
        }
        double independent = 0;
        double common = 0;
        for (int i = 0; i < weights.length; i++) {
            OptionalDouble reference = referenceUncertainty(points.get(i));
            if (reference.isEmpty()) {
                return OptionalDouble.empty();
            }
            double part = weights[i] * reference.getAsDouble();
            boolean salt = points.get(i).kind() == CalibrationPoint.Kind.SALT;
            independent += salt ? part * part : 0;
            common += salt ? 0 : part;
            independent += square(weights[i] * rectangular(resolution / 2));
        }
        return OptionalDouble.of(independent + common * common);
    }

    /** A reference of which nothing is stated is taken to be no better than the instrument says of itself. */
    private OptionalDouble referenceUncertainty(CalibrationPoint point) {
        if (point.referenceUncertainty().isPresent() || statedAccuracy.isEmpty()) {
            return point.referenceUncertainty();
        }
        return OptionalDouble.of(rectangular(statedAccuracy.getAsDouble()));
    }

    /** What a single reading adds: its last digit, and what no calibration takes away. A stated accuracy includes the latter. */
    private double ownVariance() {
        double remaining = points.isEmpty() ? 0 : quantity.hysteresisHalfWidth();
        return square(rectangular(resolution / 2)) + square(rectangular(remaining));
    }

    private boolean isExtrapolated(double raw) {
        double beyond = kind() == Kind.OFFSET ? quantity.nearby() : 0;
        return raw < low - beyond || raw > high + beyond;
    }

    private CalibrationLine line() {
        double[] readings =
                points.stream().mapToDouble(CalibrationPoint::reading).toArray();
        double[] corrections =
                points.stream().mapToDouble(CalibrationPoint::correction).toArray();
        return CalibrationLine.fit(readings, corrections, (low + high) / 2);
    }

    private static List<Calibration> campaign(List<Calibration> all, LocalDate on) {
        List<LocalDate> days = all.stream().map(Calibration::on).sorted().toList();
        if (days.isEmpty()) {
            return List.of();
        }
        LocalDate newestBefore = days.stream()
                .filter(day -> !day.isAfter(on))
                .reduce((a, b) -> b)
                .orElse(null);
        LocalDate first = newestBefore == null ? days.get(0) : newestBefore.minusDays(CAMPAIGN_DAYS);
        LocalDate last = newestBefore == null ? days.get(0).plusDays(CAMPAIGN_DAYS) : newestBefore;
        return all.stream()
                .filter(c -> !c.on().isBefore(first) && !c.on().isAfter(last))
                .toList();
    }

    private static double rectangular(double halfWidth) {
        return UncertainValue.rectangular(0, halfWidth).standardUncertainty();
    }

    private static double square(double value) {
        return value * value;
    }
}
