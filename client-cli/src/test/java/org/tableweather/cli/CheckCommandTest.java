package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CheckCommandTest {
    @TempDir
    private Path directory;

    private Path hall;

    @BeforeEach
    void makeAFolder() {
        hall = directory.resolve("hall");
        Ran.with("new", hall.toString(), "--sessions", "1");
    }

    @Test
    void namesRowColumnValueBoundAndRemedy() throws Exception {
        edit(2, "s1,2,2025-01-06T17:01:30Z,kick,kick-3-rail,147.6,-0.25,no,3,");

        Ran ran = Ran.with("check", hall.toString());

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(ran.out())
                .contains("REFUSED")
                // the header is row 1, so the second attempt stands in row 3
                .contains("trials.csv row 3, final_rebound_angle_deg = 147.6")
                .contains("remedy: ")
                .contains("bound: ")
                .contains("source: ");
    }

    @Test
    void listsAFewOfManyFindingsAndCountsTheRest() throws Exception {
        for (int row = 1; row <= 5; row++) {
            edit(row, "s1," + row + ",2025-01-06T17:01:30Z,kick,kick-3-rail,147.6,-0.25,no,3,");
        }

        assertThat(Ran.with("check", hall.toString()).out())
                .contains("5 to mend")
                .contains("row 4")
                .doesNotContain("row 5")
                .contains("... and 2 more of");
        assertThat(Ran.with("check", "--all", hall.toString()).out()).contains("row 6");
    }

    @Test
    void printsEveryFindingAsCsv() throws Exception {
        edit(2, "s1,2,2025-01-06T17:01:30Z,kick,kick-3-rail,147.6,-0.25,no,3,");

        List<String> lines =
                Ran.with("check", hall.toString(), "--csv").out().lines().toList();

        assertThat(lines.get(0)).startsWith("path,check,severity,file,row,column,value,");
        assertThat(lines).anyMatch(line -> line.contains(",refuse,trials.csv,3,final_rebound_angle_deg,147.6,"));
    }

    @Test
    void saysHowItReadASpreadsheetsFile() throws Exception {
        Path trials = hall.resolve("trials.csv");
        String semicolons = Files.readString(trials)
                .replace(',', ';')
                .replaceAll("(\\d)\\.(\\d)", "$1,$2")
                .replace("\n", "\r\n");
        Files.writeString(trials, '\uFEFF' + semicolons);

        Ran ran = Ran.with("check", hall.toString());

        assertThat(ran.exitCode()).as(ran.out()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out()).contains("read trials.csv as semicolon-separated, decimal comma");
    }

    @Test
    void refusesAllWhenOneOfSeveralIsRefused() throws Exception {
        edit(2, "s1,2,2025-01-06T17:01:30Z,kick,no-such-shot,47.6,-0.25,no,3,");
        String sound = InventedFolders.of("elm").toString();

        Ran ran = Ran.with("check", sound, hall.toString(), "--json");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.REFUSED);
        assertThat(AnalyzeCommandTest.parsed(ran.out()).path("reports").findValuesAsText("refused"))
                .containsExactly("false", "true");
    }

    @Test
    void takesOneFormatAtATime() {
        assertThat(Ran.with("check", hall.toString(), "--json", "--csv").exitCode())
                .isEqualTo(ExitCodes.USAGE);
    }

    @Test
    void explainsACheckWithItsWholeSource() {
        Ran ran = Ran.with("check", "--explain", "instrument.salt-value");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.DONE);
        assertThat(ran.out())
                .contains("severity: warn")
                .contains("bound: ")
                .contains("remedy: ")
                .contains("kind: paper")
                // as the Bureau's journal prints it
                .contains("DOI: 10.6028/jres.081A.011");
        assertThat(Ran.with("check", "--explain", "climate.log-gap").out()).contains("kind: common-practice");
    }

    @Test
    void namesChecksNearAnUnknownOne() {
        Ran ran = Ran.with("check", "--explain", "instrument.drift-of-salt");

        assertThat(ran.exitCode()).isEqualTo(ExitCodes.USAGE);
        assertThat(ran.err()).contains("instrument.");
    }

    @Test
    void tellsCautionsApartFromFindings() throws Exception {
        Path json = hall.resolve("contribution.json");
        Files.writeString(json, Files.readString(json).replace("\"delivery\"", "\"bedC\": 2.0, \"delivery\""));

        Ran ran = Ran.with("check", hall.toString());
        Ran asJson = Ran.with("check", hall.toString(), "--json");

        assertThat(ran.err()).contains("danger").contains("Local codes");
        assertThat(AnalyzeCommandTest.parsed(asJson.out()).findValuesAsText("id"))
                .contains("condensation.bed");
    }

    private void edit(int row, String line) throws Exception {
        Path trials = hall.resolve("trials.csv");
        List<String> lines = Files.readAllLines(trials);
        lines.set(row, line);
        Files.write(trials, lines);
    }
}
