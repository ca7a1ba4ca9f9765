package org.tableweather.cli;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.caution.Appliance;
import org.tableweather.schema.caution.Circuit;
import picocli.CommandLine.Option;

/** What is plugged in to hold the climates, where the user says so. */
final class PlanCircuit {
    @Option(
            names = "--heater-watts",
            paramLabel = "W",
            description = "Rated power of the heaters on one circuit, for a caution about its load.")
    private Double heaterWatts;

    @Option(
            names = "--humidifier-watts",
            paramLabel = "W",
            description = "Rated power of humidifiers and dehumidifiers on the same circuit.")
    private Double humidifierWatts;

    @Option(names = "--breaker-amps", paramLabel = "A", description = "Rating of that circuit's breaker or fuse.")
    private Double breakerAmps;

    @Option(names = "--volts", paramLabel = "V", description = "Nominal voltage of that circuit.")
    private Double volts;

    /**
     * The circuit, none where nothing is said.
     *
     * @throws Failure when only a part is said
     */
    List<Circuit> circuits() {
        boolean anything = heaterWatts != null || humidifierWatts != null;
        if (!anything && breakerAmps == null && volts == null) {
            return List.of();
        }
        if (!anything || breakerAmps == null || volts == null) {
            throw Failure.usage(
                    "a circuit is judged by its load, breaker and voltage together",
                    "give --breaker-amps, --volts, and --heater-watts or --humidifier-watts");
        }
        List<Appliance> appliances = new ArrayList<>();
        if (heaterWatts != null) {
            appliances.add(new Appliance("heaters", Appliance.Kind.HEATER, heaterWatts));
        }
        if (humidifierWatts != null) {
            appliances.add(new Appliance("humidifiers", Appliance.Kind.HUMIDIFIER, humidifierWatts));
        }
        return List.of(new Circuit(breakerAmps, volts, appliances));
    }
}
