package org.tableweather.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** {@code tableweather completion}. */
@Command(
        name = "completion",
        description = "Prints the completion script for bash and zsh.",
        footer = {"", "Use it:  source <(tableweather completion)"})
final class CompletionCommand extends Subcommand {

    @Override
    public Integer call() {
        print(AutoComplete.bash(spec().root().name(), spec().root().commandLine()));
        return ExitCodes.DONE;
    }
}
