package org.tableweather.cli;

import java.time.Duration;
import java.util.List;
import java.util.OptionalDouble;
import org.tableweather.schema.caution.Caution;
import org.tableweather.schema.caution.Cautions;
import org.tableweather.schema.caution.HeldClimate;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code tableweather climate air}. */
@Command(
        name = "air",
        description = "Tells what follows from a thermometer and a hygrometer: dew point, wet bulb, absolute humidity,"
                + " mixing ratio, enthalpy, heat index, what the cloth feels; with cautions.",
        footer = {
            "",
            "Accuracies are taken as rectangles of that half-width (JCGM100). Values use the default formulas, without"
                    + " enhancement factor, and say which.",
            "Example:",
            "  tableweather climate air --temp-c 21 --rh-pct 38 --bed-c 30 --temp-accuracy 0.3 --rh-accuracy 2"
        })
final class ClimateAirCommand extends Subcommand {
    @ArgGroup(multiplicity = "1")
    private Temperature temperature;

    static final class Temperature {
        @Option(names = "--temp-c", required = true, paramLabel = "C", description = "Air temperature, °C.")
        private Double celsius;

        @Option(names = "--temp-f", required = true, paramLabel = "F", description = "Air temperature, °F.")
        private Double fahrenheit;

        private double inCelsius() {
            return celsius != null ? celsius : (fahrenheit - 32) / 1.8;
        }
    }

    @Option(names = "--rh-pct", required = true, paramLabel = "PCT", description = "Relative humidity, %.")
    private double rhPct;

    @Option(names = "--bed-c", paramLabel = "C", description = "Temperature of the bed, °C.")
    private Double bedC;

    @Option(
            names = "--altitude-m",
            paramLabel = "M",
            defaultValue = "0",
            description =
                    "Height above the sea, for the pressure of the standard atmosphere; standard: ${DEFAULT-VALUE}.")
    private double altitudeM;

    @Option(names = "--temp-accuracy", paramLabel = "K", description = "± K of air and bed temperature.")
    private Double tempAccuracyK;

    @Option(names = "--rh-accuracy", paramLabel = "PCT", description = "± %%RH.")
    private Double rhAccuracyPct;

    @Option(
            names = "--wool-pct",
            paramLabel = "PCT",
            defaultValue = "85",
            description = "Wool in the cloth, the rest nylon, %%; standard: ${DEFAULT-VALUE}.")
    private double woolPct;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    record Report(String formulas, double pressurePa, List<AirFigures.Figure> values, List<Caution> cautions) {}

    @Override
    public Integer call() {
        try {
            AirFigures figures = new AirFigures(
                    temperature.inCelsius(),
                    rhPct,
                    altitudeM,
                    bedC == null ? OptionalDouble.empty() : OptionalDouble.of(bedC),
                    tempAccuracyK == null ? OptionalDouble.empty() : OptionalDouble.of(tempAccuracyK),
                    rhAccuracyPct == null ? OptionalDouble.empty() : OptionalDouble.of(rhAccuracyPct),
                    woolPct);
            HeldClimate held = HeldClimate.of(figures.air(), Duration.ofHours(2));
            Report report = new Report(
                    figures.air().formula().label(),
                    figures.air().pressurePa(),
                    figures.all(),
                    Cautions.of(bedC == null ? held : held.withBed(bedC)));
            print(json ? JsonText.of(report) : AirText.of(report));
            return ExitCodes.DONE;
        } catch (IllegalArgumentException e) {
            throw Failure.usage(e.getMessage(), "the formulas hold inside these ranges only")
                    .because(e);
        }
    }
}
