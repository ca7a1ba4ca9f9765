package org.tableweather.analyzers.standard.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.ClimateReading;

/**
 * Two loggers in one room, held against each other at the first one's times.
 *
 * <p>Humidity is compared twice: as read, and with the second logger's vapour brought to the first one's temperature, so that a
 * difference that only comes from a warmer corner is told from a fault of the sensor.
 *
 * @param pairs how many times could be compared
 * @param tempK second less first, K
 * @param rhPct second less first as read, %RH
 * @param sameAirRhPct second less first at the first one's temperature, %RH
 */
public record LoggerComparison(int pairs, Difference tempK, Difference rhPct, Difference sameAirRhPct) {

    /**
     * Means of uncalibrated loggers in one room were seen from 4 to 15 %RH apart in a published log of three rooms, their temperatures
     * within 0.5 K.
     *
     * @source Morgner2017
     */
    public static final double UNCALIBRATED_RH_PCT = 4;

    /** The far end of what was published for one room, %RH. */
    public static final double FARTHEST_RH_PCT = 15;

    /** How near temperatures were in the same rooms, K. */
    public static final double NEAR_K = 0.5;

    /**
     * A difference over time.
     *
     * @param mean the offset
     * @param standardDeviation its spread from time to time
     * @param least smallest difference
     * @param greatest largest difference
     */
    public record Difference(double mean, double standardDeviation, double least, double greatest) {

        private static Difference of(double[] values) {
            double mean = 0;
            double squares = 0;
            double least = Double.POSITIVE_INFINITY;
            double greatest = Double.NEGATIVE_INFINITY;
            for (int i = 0; i < values.length; i++) {
                double step = values[i] - mean;
                mean += step / (i + 1);
                squares += step * (values[i] - mean);
                least = Math.min(least, values[i]);
                greatest = Math.max(greatest, values[i]);
            }
            return new Difference(mean, Math.sqrt(squares / (values.length - 1)), least, greatest);
        }
    }

    /** How the two agree on humidity, the air taken as the same. */
    public enum Agreement {
        /** Nearer than uncalibrated loggers were seen apart. */
        NEAR,
        /** As far apart as uncalibrated loggers were seen in one room. */
        UNCALIBRATED,
        /** Farther than that: one is at fault, or they are not in the same air. */
        FAULTY
    }

    /**
     * Compares the two.
     *
     * @param first readings of one logger, in any order
     * @param second readings of another in the same room, in any order
     * @param maxGap widest gap between neighbouring readings of the second to draw a straight line across
     * @return empty when fewer than two times are common
     */
    public static Optional<LoggerComparison> of(
            List<ClimateReading> first, List<ClimateReading> second, Duration maxGap) {
        List<ClimateReading> theirs = inOrder(second);
        List<ClimateReading[]> pairs = new ArrayList<>();
        int next = 0;
        for (ClimateReading own : inOrder(first)) {
            while (next < theirs.size() && theirs.get(next).time().isBefore(own.time())) {
                next++;
            }
            int pairWith = next;
            at(own.time(), theirs, pairWith, maxGap).ifPresent(other -> pairs.add(new ClimateReading[] {own, other}));
        }
        return pairs.size() < 2 ? Optional.empty() : Optional.of(of(pairs));
    }

    /** How the two agree on humidity, the air taken as the same. */
    public Agreement agreement() {
        double apart = Math.abs(sameAirRhPct.mean());
        if (apart < UNCALIBRATED_RH_PCT) {
            return Agreement.NEAR;
        }
        return apart <= FARTHEST_RH_PCT ? Agreement.UNCALIBRATED : Agreement.FAULTY;
    }

    /** Whether the temperatures are farther apart than those of loggers in one room were seen. */
    public boolean differInTemperature() {
        return Math.abs(tempK.mean()) > NEAR_K;
    }

    private static LoggerComparison of(List<ClimateReading[]> pairs) {
        int n = pairs.size();
        double[] tempK = new double[n];
        double[] rhPct = new double[n];
        double[] sameAir = new double[n];
        for (int i = 0; i < n; i++) {
            ClimateReading own = pairs.get(i)[0];
            ClimateReading other = pairs.get(i)[1];
            tempK[i] = other.tempC() - own.tempC();
            rhPct[i] = other.rhPct() - own.rhPct();
            sameAir[i] = atTemperature(other, own.tempC()) - own.rhPct();
        }
        return new LoggerComparison(n, Difference.of(tempK), Difference.of(rhPct), Difference.of(sameAir));
    }

    /** The reading's vapour at another temperature, %RH; above 100 where it would condense, as a difference wants it. */
    private static double atTemperature(ClimateReading reading, double tempC) {
        MoistAir air = MoistAir.of(reading.tempC(), reading.rhPct());
        return 100 * air.vapourPressurePa() / air.formula().saturationPa(tempC, air.pressurePa());
    }

    private static List<ClimateReading> inOrder(List<ClimateReading> readings) {
        return readings.stream()
                .filter(r -> MoistAir.TEMPERATURE.contains(r.tempC()) && MoistAir.HUMIDITY.contains(r.rhPct()))
                .sorted(Comparator.comparing(ClimateReading::time))
                .toList();
    }

    /** The other logger at this time: its reading, or the straight line from the one before to the one at {@code next}. */
    private static Optional<ClimateReading> at(Instant time, List<ClimateReading> readings, int next, Duration maxGap) {
        if (next < readings.size() && readings.get(next).time().equals(time)) {
            return Optional.of(readings.get(next));
        }
        if (next == 0 || next == readings.size()) {
            return Optional.empty();
        }
        ClimateReading before = readings.get(next - 1);
        ClimateReading after = readings.get(next);
        Duration gap = Duration.between(before.time(), after.time());
        if (gap.compareTo(maxGap) > 0) {
            return Optional.empty();
        }
        double share = (double) Duration.between(before.time(), time).toMillis() / gap.toMillis();
        return Optional.of(new ClimateReading(
                before.instrument(),
                time,
                before.tempC() + share * (after.tempC() - before.tempC()),
                before.rhPct() + share * (after.rhPct() - before.rhPct()),
                before.pressureHpa() + share * (after.pressureHpa() - before.pressureHpa()),
                before.placement()));
    }
}
