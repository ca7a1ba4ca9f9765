package org.tableweather.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** {@code tableweather schema}. */
@Command(
        name = "schema",
        description = "Lists what the open format is made of.",
        subcommands = {ShotsCommand.class, ChecksCommand.class})
final class SchemaCommand extends Subcommand {

    @Override
    public Integer call() {
        throw new ParameterException(spec().commandLine(), "a command is missing: schema shots, or schema checks");
    }
}
