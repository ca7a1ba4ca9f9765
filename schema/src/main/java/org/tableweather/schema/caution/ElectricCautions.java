package org.tableweather.schema.caution;

import java.time.Duration;
import java.util.List;
import org.tableweather.schema.caution.Caution.Level;

/** What a circuit carries. */
final class ElectricCautions {
    /** From here on a load counts as continuous. */
    static final Duration CONTINUOUS = Duration.ofHours(3);

    private ElectricCautions() {}

    /**
     * A load held for three hours or more may take 80 % of the breaker's rating, a shorter one all of it.
     *
     * @source NFPA70
     */
    static List<Caution> of(Circuit circuit, Duration held) {
        double load = circuit.loadWatts();
        if (load > circuit.ratedWatts()) {
            String advice =
                    "This is more than the breaker carries: move appliances to another circuit. A fitting plug proves nothing.";
            return List.of(Caution.deferring(
                    "electric.overload", Level.DANGER, advice, load, circuit.ratedWatts(), "W", "NFPA70"));
        }
        if (load > circuit.continuousWatts() && held.compareTo(CONTINUOUS) >= 0) {
            String advice =
                    "For three hours or more a circuit may carry 80 % of its breaker: use a second circuit or less power.";
            return List.of(Caution.deferring(
                    "electric.continuous", Level.CAUTION, advice, load, circuit.continuousWatts(), "W", "NFPA70"));
        }
        return List.of();
    }
}
