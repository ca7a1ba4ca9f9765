package org.tableweather.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** {@code tableweather climate}. */
@Command(
        name = "climate",
        description = "Brings a logger's readings into climate.csv.",
        subcommands = ClimateImportCommand.class)
final class ClimateCommand extends Subcommand {

    @Override
    public Integer call() {
        throw new ParameterException(spec().commandLine(), "a command is missing: climate import");
    }
}
