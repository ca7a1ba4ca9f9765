package org.tableweather.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** What every command has: results go to standard output, talk goes to standard error. */
abstract class Subcommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    /** Does the work; throws a {@link Failure} to end early. */
    @Override
    public abstract Integer call() throws Exception;

    /**
     * Prints a result.
     *
     * @throws OutputClosed when nobody reads it any more
     */
    final void print(String result) {
        PrintWriter out = spec.commandLine().getOut();
        out.print(result);
        out.flush();
        if (out.checkError()) {
            throw new OutputClosed();
        }
    }

    /** Prints a line of talk. */
    final void say(String talk) {
        PrintWriter err = spec.commandLine().getErr();
        err.println(talk);
        err.flush();
    }

    /** The command with its usage and its relatives. */
    final CommandSpec spec() {
        return spec;
    }
}
