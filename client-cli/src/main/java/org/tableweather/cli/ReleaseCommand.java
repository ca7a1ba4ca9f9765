package org.tableweather.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;

/** {@code tableweather release}. */
@Command(
        name = "release",
        description = "Freezes contributions into a numbered release that can be cited; verifies one.",
        subcommands = {
            ReleaseCreateCommand.class,
            ReleaseListCommand.class,
            ReleaseBuildCommand.class,
            ReleaseVerifyCommand.class
        })
final class ReleaseCommand extends Subcommand {

    @Override
    public Integer call() {
        throw new ParameterException(
                spec().commandLine(), "a command is missing: release create, list, build or verify");
    }
}
