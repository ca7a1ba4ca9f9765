package org.tableweather.schema.caution;

import java.util.List;

/**
 * A branch circuit and all that runs on it during the session.
 *
 * @param breakerAmps rating of the breaker or fuse, A
 * @param volts nominal voltage, V
 * @param appliances everything that draws from it
 */
public record Circuit(double breakerAmps, double volts, List<Appliance> appliances) {

    /** Share of the breaker's rating that a load of three hours or more may take. */
    public static final double CONTINUOUS_SHARE = 0.8;

    public Circuit {
        requirePositive("breakerAmps", breakerAmps);
        requirePositive("volts", volts);
        appliances = List.copyOf(appliances);
    }

    /** Sum of the rated powers, W. */
    public double loadWatts() {
        return appliances.stream().mapToDouble(Appliance::watts).sum();
    }

    /** What the breaker carries, W: {@code I · U}. */
    public double ratedWatts() {
        return breakerAmps * volts;
    }

    /**
     * What may run for three hours or more, W: {@code 0.8 · I · U}; 1 440 W on 15 A at 120 V.
     *
     * @source NFPA70
     */
    public double continuousWatts() {
        return CONTINUOUS_SHARE * ratedWatts();
    }

    private static void requirePositive(String name, double value) {
        if (!(value > 0) || !Double.isFinite(value)) {
            throw new IllegalArgumentException(name + " " + value + " must be above 0");
        }
    }
}
