package org.tableweather.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.MalformedInputException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.tableweather.analyzers.host.ChartUnavailable;
import org.tableweather.analyzers.host.plugin.PluginFailure;
import org.tableweather.release.NoRelease;
import org.tableweather.release.ReleaseChanged;
import org.tableweather.schema.folder.ArchiveRefused;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Turns what went wrong into one line and a remedy on standard error. */
final class Failures {
    private static final String REPORT = "run it again with --verbose and report what it prints";

    private Failures() {}

    /** For wrong usage: what is wrong, what was probably meant, where help is. */
    static int onUsage(ParameterException wrong, String[] arguments) {
        CommandLine command = wrong.getCommandLine();
        PrintWriter err = command.getErr();
        err.println(name(command) + ": " + wrong.getMessage());
        CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err);
        err.println("  help: " + name(command) + " --help");
        return ExitCodes.USAGE;
    }

    /** For everything thrown while a command runs. */
    static int onExecution(Exception thrown, CommandLine command, ParseResult parsed) {
        PrintWriter err = command.getErr();
        if (thrown instanceof OutputClosed) {
            return ExitCodes.DONE;
        }
        Failure failure = explained(thrown);
        err.println(name(command) + ": " + failure.getMessage());
        if (!failure.remedy().isEmpty()) {
            err.println("  remedy: " + failure.remedy());
        }
        if (isVerbose(command)) {
            thrown.printStackTrace(err);
        }
        return failure.exitCode();
    }

    private static Failure explained(Exception thrown) {
        if (thrown instanceof Failure failure) {
            return failure;
        }
        if (thrown instanceof ChartUnavailable) {
            return Failure.fault(thrown.getMessage(), "");
        }
        if (thrown instanceof PluginFailure) {
            return Failure.fault(thrown.getMessage(), "tell the jar's author; --verbose shows where it happened");
        }
        if (thrown instanceof ArchiveRefused refused) {
            return Failure.refused(refused.getMessage(), refused.finding().remedy());
        }
        if (thrown instanceof ReleaseChanged) {
            return Failure.refused(thrown.getMessage(), "");
        }
        if (thrown instanceof NoRelease) {
            return Failure.usage(thrown.getMessage(), "");
        }
        if (thrown instanceof FileSystemException file) {
            return ofFile(file);
        }
        if (thrown instanceof MalformedInputException) {
            return Failure.refused("the file is not UTF-8 text", "save it as UTF-8");
        }
        if (thrown instanceof IOException && thrown.getMessage() != null) {
            return Failure.fault(thrown.getMessage(), "");
        }
        return Failure.fault("unexpected: " + thrown, REPORT);
    }

    private static Failure ofFile(FileSystemException thrown) {
        String file = thrown.getFile();
        if (thrown instanceof NoSuchFileException) {
            return Failure.usage("there is no " + file, "check the path");
        }
        if (thrown instanceof FileAlreadyExistsException) {
            return Failure.usage(file + " is there already", "name another path, or move it away");
        }
        if (thrown instanceof AccessDeniedException) {
            return Failure.fault("no permission for " + file, "change its permissions, or name another path");
        }
        String reason = thrown.getReason() == null ? "cannot be read or written" : thrown.getReason();
        return Failure.fault(file + ": " + reason, "");
    }

    private static String name(CommandLine command) {
        return command.getCommandSpec().qualifiedName();
    }

    private static boolean isVerbose(CommandLine command) {
        return command.getCommandSpec().root().userObject() instanceof Cli cli && cli.isVerbose();
    }
}
