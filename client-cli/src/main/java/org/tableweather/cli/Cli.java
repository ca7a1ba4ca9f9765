package org.tableweather.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The command {@code tableweather}: contribute, find, analyse and compare, with or without a server. */
@Command(
        name = "tableweather",
        versionProvider = Cli.Version.class,
        description = "How pool tables play in their room's climate: contribute sessions, check them, pool them.",
        synopsisSubcommandLabel = "COMMAND",
        commandListHeading = "%nCommands:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:done",
            "1:a fault of the program or the machine",
            "2:wrong usage",
            "3:the checks refuse the data, or a release is not as it was released",
            "4:the server cannot be reached, or refuses"
        },
        subcommands = {
            DemoCommand.class,
            PlanCommand.class,
            NewCommand.class,
            ClimateCommand.class,
            CheckCommand.class,
            ContributeCommand.class,
            WithdrawCommand.class,
            AnalyzeCommand.class,
            RerunCommand.class,
            CurveCommand.class,
            CompareCommand.class,
            PredictCommand.class,
            FindCommand.class,
            ReleaseCommand.class,
            FetchCommand.class,
            ShotsCommand.class,
            ChecksCommand.class,
            SchemaCommand.class,
            ServeCommand.class,
            AccountCommand.class,
            CompletionCommand.class,
            HelpCommand.class
        })
public final class Cli extends Subcommand {
    @Option(names = "--verbose", scope = ScopeType.INHERIT, description = "Show the trace of a fault.")
    private boolean verbose;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            scope = ScopeType.INHERIT,
            description = "Show this help.")
    private boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Show the version.")
    private boolean version;

    Cli() {}

    /**
     * Runs the command and ends the process with its exit code.
     *
     * @param arguments as typed
     */
    public static void main(String[] arguments) {
        CommandLine command = commandLine();
        command.setOut(utf8(FileDescriptor.out));
        command.setErr(utf8(FileDescriptor.err));
        int exitCode = command.execute(arguments);
        command.getOut().flush();
        command.getErr().flush();
        System.exit(exitCode);
    }

    /** The command, ready to execute. */
    static CommandLine commandLine() {
        return new CommandLine(new Cli())
                .setParameterExceptionHandler(Failures::onUsage)
                .setExecutionExceptionHandler(Failures::onExecution)
                .setCaseInsensitiveEnumValuesAllowed(true);
    }

    private static PrintWriter utf8(FileDescriptor stream) {
        return new PrintWriter(new OutputStreamWriter(new FileOutputStream(stream), StandardCharsets.UTF_8), false);
    }

    @Override
    public Integer call() {
        throw new CommandLine.ParameterException(spec().commandLine(), "a command is missing");
    }

    boolean isVerbose() {
        return verbose;
    }

    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = Cli.class.getPackage().getImplementationVersion();
            return new String[] {"tableweather " + (version == null ? "(not packaged)" : version)};
        }
    }
}
