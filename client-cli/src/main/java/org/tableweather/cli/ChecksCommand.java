package org.tableweather.cli;

import java.util.List;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Checks;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code tableweather checks}. */
@Command(name = "checks", description = "Lists every check: its severity, bound, remedy and source.")
final class ChecksCommand extends Subcommand {
    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    record CheckList(List<Check> checks) {}

    @Override
    public Integer call() {
        print(json ? JsonText.of(new CheckList(Checks.all())) : listed());
        return ExitCodes.DONE;
    }

    private static String listed() {
        StringBuilder text = new StringBuilder();
        for (Check check : Checks.all()) {
            text.append(String.format("%-6s %s: %s%n", check.severity().schemaName(), check.id(), check.title()))
                    .append(String.format("         bound: %s%n", check.bound()))
                    .append(String.format("         remedy: %s; source: %s%n", check.remedy(), check.reference()));
        }
        return text.toString();
    }
}
