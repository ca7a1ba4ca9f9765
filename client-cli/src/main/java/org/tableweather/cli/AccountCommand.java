package org.tableweather.cli;

import java.nio.file.Path;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;

/** {@code tableweather account}. */
@Command(
        name = "account",
        description = "Makes accounts on a server; needs an operator's token.",
        subcommands = AccountCommand.Add.class)
final class AccountCommand extends Subcommand {

    @Override
    public Integer call() {
        throw new ParameterException(spec().commandLine(), "a command is missing: account add");
    }

    enum Role {
        CONTRIBUTOR,
        CURATOR,
        OPERATOR
    }

    /** {@code tableweather account add}. */
    @Command(
            name = "add",
            description = "Makes an account and prints its token, which is shown this once.",
            footer = {
                "",
                "Example, on the server's machine:",
                "  tableweather account add alder --token-file tableweather-data/operator-token"
            })
    static final class Add extends Subcommand {
        @Parameters(paramLabel = "NAME", description = "Unique on the server.")
        private String name;

        @Option(
                names = "--role",
                paramLabel = "ROLE",
                defaultValue = "contributor",
                description = "One of ${COMPLETION-CANDIDATES}; standard: ${DEFAULT-VALUE}.")
        private Role role;

        @Option(
                names = "--days",
                paramLabel = "N",
                defaultValue = "365",
                description = "How long the token lives; standard: ${DEFAULT-VALUE}.")
        private int days;

        @Option(names = "--into", paramLabel = "FILE", description = "Write the token to this file instead.")
        private Path into;

        @Option(names = "--json", description = "Print JSON.")
        private boolean json;

        record Made(String name, String role, String token) {}

        @Mixin
        private ServerOptions server;

        @Override
        public Integer call() throws Exception {
            String token =
                    new ServerAccounts(server.client()).add(name, role.name().toLowerCase(java.util.Locale.ROOT), days);
            if (into == null) {
                print(token + "\n");
            } else {
                OwnerOnly.write(into, token);
                say("wrote " + into + ", readable by you alone");
            }
            return ExitCodes.DONE;
        }
    }
}
