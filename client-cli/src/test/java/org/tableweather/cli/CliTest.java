package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Path;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class CliTest {

    @Test
    void listsItsExitCodesInTheHelp() {
        Ran ran = Ran.with("--help");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out())
                .contains("Exit codes:")
                .contains("3   the checks refuse the data")
                .contains("4   the server cannot be reached, or refuses");
        assertThat(ran.err()).isEmpty();
    }

    @Test
    void everyCommandExplainsItself() {
        CommandLine.Model.CommandSpec root = Cli.commandLine().getCommandSpec();

        assertThat(root.subcommands().keySet())
                .contains(
                        "serve",
                        "new",
                        "check",
                        "contribute",
                        "find",
                        "analyze",
                        "rerun",
                        "curve",
                        "compare",
                        "predict",
                        "demo",
                        "climate",
                        "completion");
        for (String command : root.subcommands().keySet()) {
            assertThat(Ran.with(command, "--help").out()).as(command).contains("Usage: tableweather " + command);
        }
    }

    @Test
    void explainsACommandByTheWordHelp() {
        assertThat(Ran.with("help", "climate", "import").out())
                .isEqualTo(Ran.with("climate", "import", "--help").out());
        assertThat(Ran.with("help").out()).isEqualTo(Ran.with("--help").out());
        assertThat(Ran.with("help", "fnid").err())
                .contains("there is no command fnid")
                .contains("find");
    }

    @Nested
    class WrongUsage {
        @Test
        void suggestsTheNearestCommandForATypo() {
            Ran ran = Ran.with("anlyze");

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
            assertThat(ran.err()).contains("anlyze").contains("Did you mean: tableweather analyze");
            assertThat(ran.out()).isEmpty();
        }

        @Test
        void suggestsTheNearestOptionForATypo() {
            assertThat(Ran.with("analyze", "x", "--jsno").err()).contains("--json");
        }

        @Test
        void asksForACommand() {
            Ran ran = Ran.with();

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
            assertThat(ran.err()).contains("a command is missing").contains("tableweather --help");
        }

        @Test
        void namesAMissingPath() {
            Ran ran = Ran.with("check", "no-such-folder");

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
            assertThat(ran.err()).contains("there is no no-such-folder");
        }

        @Test
        void listsTheAnalyzersForAnUnknownOne(@TempDir Path folder) {
            Ran ran = Ran.with("analyze", "rebound-humidty", "--data", folder.toString());

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
            assertThat(ran.err()).contains("rebound-humidity");
        }

        @Test
        void wantsOnePoolForAnAnalysis(@TempDir Path folder) {
            Ran ran = Ran.with("curve", "--data", folder.toString(), "--server", "http://127.0.0.1:1");

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
            assertThat(ran.err()).contains("--data and --server name two pools");
        }

        @Test
        void refusesAnAddressThatIsNone() {
            Ran ran = Ran.with("analyze", "rebound-humidity", "--server", "ftp://x");

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
            assertThat(ran.err()).contains("ftp://x is no address");
        }
    }

    @Nested
    class NoServer {
        private static final String NOBODY = "http://127.0.0.1:1";

        @Test
        void endsWith4AndSaysHowToStartOne() {
            Ran ran = Ran.with("analyze", "rebound-humidity", "--server", NOBODY);

            assertThat(ran.exitCode()).isEqualTo(ExitCodes.SERVER);
            assertThat(ran.err()).contains("no server answers at " + NOBODY).contains("tableweather serve");
            assertThat(ran.out()).isEmpty();
        }

        @Test
        void showsATraceOnlyWhenAskedTo() {
            assertThat(Ran.with("analyze", "rebound-humidity", "--server", NOBODY)
                            .err())
                    .doesNotContain("\tat ");
            assertThat(Ran.with("analyze", "rebound-humidity", "--server", NOBODY, "--verbose")
                            .err())
                    .contains("\tat ");
        }
    }

    @Test
    void endsQuietlyWhenNobodyReadsItsResults() {
        StringWriter err = new StringWriter();
        int exitCode = Cli.commandLine()
                .setOut(new PrintWriter(new ClosedPipe()))
                .setErr(new PrintWriter(err))
                .execute("analyze", "--list", "--json");

        assertThat(exitCode).isEqualTo(ExitCodes.DONE);
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void printsACompletionScript() {
        assertThat(Ran.with("completion").out())
                .contains("complete -F _complete_tableweather")
                .contains("contribute");
    }

    private static final class ClosedPipe extends Writer {
        @Override
        public void write(char[] text, int start, int length) throws java.io.IOException {
            throw new java.io.IOException("Broken pipe");
        }

        @Override
        public void flush() {
            // nothing waits
        }

        @Override
        public void close() {
            // closed already
        }
    }
}
