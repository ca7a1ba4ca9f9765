package org.tableweather.cli;

import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code tableweather help}. */
@Command(name = "help", description = "Explains a command: help find.")
final class HelpCommand extends Subcommand {
    @Parameters(arity = "0..*", paramLabel = "COMMAND", description = "Which command.")
    private List<String> names = List.of();

    @Override
    public Integer call() {
        CommandLine command = spec().root().commandLine();
        for (String name : names) {
            CommandLine next = command.getSubcommands().get(name);
            if (next == null) {
                throw new ParameterException(
                        spec().commandLine(),
                        "there is no command " + name + ": one of "
                                + String.join(", ", command.getSubcommands().keySet()));
            }
            command = next;
        }
        print(command.getUsageMessage());
        return ExitCodes.DONE;
    }
}
