package org.tableweather.cli;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.caution.Appliance;
import org.tableweather.schema.caution.Circuit;
import org.tableweather.schema.caution.HeldClimate;
import org.tableweather.schema.climate.MoistAir;
import picocli.CommandLine.Option;

/** What is plugged in to hold the climates, how cold the table is, and whether someone stays: where the user says so. */
final class PlanCircuit {
    private static final double MOST = 100_000;

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

    @Option(
            names = "--bed-c",
            paramLabel = "C",
            description =
                    "Temperature of the table's bed, °C, where it is colder than the room: water may condense on it.")
    private Double bedC;

    @Option(
            names = "--unattended",
            description = "Nobody stays while the climate is held: says what is wrong with that.")
    private boolean unattended;

    /**
     * One climate of the plan as the cautions see it.
     *
     * @throws Failure for a value that cannot be
     */
    HeldClimate held(double tempC, double rhPct, Duration held) {
        HeldClimate climate = HeldClimate.of(MoistAir.of(tempC, rhPct), held)
                .with(circuits())
                .with(unattended ? HeldClimate.Attendance.UNATTENDED : HeldClimate.Attendance.ATTENDED);
        if (bedC == null) {
            return climate;
        }
        if (!(bedC >= MoistAir.SURFACE.min() && bedC <= MoistAir.SURFACE.max())) {
            throw Failure.usage("--bed-c " + bedC + " is outside -40..60", "write degrees Celsius within");
        }
        return climate.withBed(bedC);
    }

    /**
     * The circuit, none where nothing is said.
     *
     * @throws Failure when only a part is said
     */
    private List<Circuit> circuits() {
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
            appliances.add(new Appliance("heaters", Appliance.Kind.HEATER, positive("--heater-watts", heaterWatts)));
        }
        if (humidifierWatts != null) {
            appliances.add(new Appliance(
                    "humidifiers", Appliance.Kind.HUMIDIFIER, positive("--humidifier-watts", humidifierWatts)));
        }
        return List.of(new Circuit(positive("--breaker-amps", breakerAmps), positive("--volts", volts), appliances));
    }

    private static double positive(String option, double value) {
        if (!(value > 0 && value <= MOST)) {
            throw Failure.usage(option + " " + value + " is not above 0 and up to 100000", "read it off the plate");
        }
        return value;
    }
}
