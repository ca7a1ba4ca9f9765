package org.tableweather.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** {@code tableweather climate}. */
@Command(
        name = "climate",
        description = "Brings loggers' readings into climate.csv, compares two, tells what follows from a reading.",
        subcommands = {ClimateImportCommand.class, ClimateCompareCommand.class, ClimateAirCommand.class})
final class ClimateCommand extends Subcommand {

    @Override
    public Integer call() {
        throw new ParameterException(
                spec().commandLine(), "a command is missing: climate import, climate compare, or climate air");
    }
}
