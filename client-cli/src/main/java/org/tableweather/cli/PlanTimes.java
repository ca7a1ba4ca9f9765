package org.tableweather.cli;

import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import org.tableweather.analyzers.standard.plan.ClimateStep.TimeConstant;
import picocli.CommandLine.Option;

/** When the plan begins, how long each climate is held first, and how fast the cloth follows. */
final class PlanTimes {
    private static final double MOST_SETTLE_HOURS = 336;
    private static final double MOST_TIME_CONSTANT_HOURS = 1000;

    @Option(
            names = "--first-day",
            paramLabel = "TIME",
            description =
                    "When the first climate begins to be held, like 2026-01-12T14:00:00+01:00; without it the plan"
                            + " counts days.")
    private String firstDay;

    @Option(
            names = "--settle-hours",
            paramLabel = "H",
            defaultValue = "4",
            description = "How long a climate is held before the first attempt; standard: ${DEFAULT-VALUE}.")
    private double settleHours;

    @Option(
            names = "--time-constant-hours",
            paramLabel = "H",
            description = "The time constant with which your cloth follows the air, if you have measured one"
                    + " (tableweather analyze settling).")
    private Double timeConstantHours;

    @Option(
            names = "--time-constant-error-hours",
            paramLabel = "H",
            description = "The stated error of that time constant; standard: 0.")
    private Double errorHours;

    /**
     * What was typed.
     *
     * @throws Failure for a value that cannot be
     */
    PlanReport.Times times() {
        if (!(settleHours >= 0 && settleHours <= MOST_SETTLE_HOURS)) {
            throw Failure.usage("--settle-hours " + settleHours + " is outside 0..336", "choose within");
        }
        return new PlanReport.Times(
                firstDay == null ? NewFolder.EXAMPLE_DAY : firstDay(), firstDay != null, settleHours, timeConstant());
    }

    private Optional<TimeConstant> timeConstant() {
        if (timeConstantHours == null) {
            if (errorHours != null) {
                throw Failure.usage(
                        "--time-constant-error-hours " + errorHours + " is the error of nothing",
                        "give --time-constant-hours as well");
            }
            return Optional.empty();
        }
        if (!(timeConstantHours > 0 && timeConstantHours <= MOST_TIME_CONSTANT_HOURS)) {
            throw Failure.usage(
                    "--time-constant-hours " + timeConstantHours + " is not above 0 and up to 1000", "choose within");
        }
        double error = errorHours == null ? 0 : errorHours;
        if (!(error >= 0 && error < timeConstantHours)) {
            throw Failure.usage(
                    "--time-constant-error-hours " + error + " is not from 0 to below " + timeConstantHours,
                    "choose within, or measure the time constant better");
        }
        return Optional.of(new TimeConstant(timeConstantHours, error));
    }

    private OffsetDateTime firstDay() {
        try {
            return OffsetDateTime.parse(firstDay);
        } catch (DateTimeParseException e) {
            throw Failure.usage(
                            "--first-day " + firstDay + " is no time with a zone",
                            "write it like 2026-01-12T14:00:00+01:00")
                    .because(e);
        }
    }
}
