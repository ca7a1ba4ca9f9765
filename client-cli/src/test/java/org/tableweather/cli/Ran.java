package org.tableweather.cli;

import java.io.PrintWriter;
import java.io.StringWriter;

/**
 * One run of the command, as a shell would see it.
 *
 * @param exitCode what it ended with
 * @param out standard output
 * @param err standard error
 */
record Ran(int exitCode, String out, String err) {

    /** Runs the command in this process. */
    static Ran with(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int exitCode = Cli.commandLine()
                .setOut(new PrintWriter(out))
                .setErr(new PrintWriter(err))
                .execute(arguments);
        return new Ran(exitCode, out.toString(), err.toString());
    }
}
