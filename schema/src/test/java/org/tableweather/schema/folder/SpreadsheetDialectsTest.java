package org.tableweather.schema.folder;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tableweather.schema.record.Trial;

/** What spreadsheets write is no error, and the reader says what it took it for. */
class SpreadsheetDialectsTest {
    private static final String TRIALS = "trials.csv";

    @TempDir
    Path folder;

    private List<Trial> plain;

    @BeforeEach
    void readPlain() throws IOException {
        plain = TestReading.of(ExampleFolder.sound().writeTo(folder.resolve("plain"))).trials;
    }

    private TestReading rewritten(UnaryOperator<String> rewriting, Charset charset) throws IOException {
        ExampleFolder example = ExampleFolder.sound();
        Path path = example.writeTo(folder.resolve("rewritten"));
        for (String file : List.of(TRIALS, "climate.csv")) {
            Files.write(path.resolve(file), rewriting.apply(example.get(file)).getBytes(charset));
        }
        return TestReading.of(path);
    }

    private void assertReadAs(TestReading reading, String dialect, boolean noted) {
        assertThat(reading.report().isRefused()).as(reading.report().toString()).isFalse();
        assertThat(reading.trials).isEqualTo(plain);
        assertThat(reading.report().dialects()).containsEntry(TRIALS, dialect).containsEntry("climate.csv", dialect);
        if (noted) {
            assertThat(reading.report().counts()).containsOnlyKeys("structure.spreadsheet-dialect");
        } else {
            assertThat(reading.report().findings()).isEmpty();
        }
    }

    @Test
    void plain() throws IOException {
        assertReadAs(
                rewritten(csv -> csv, StandardCharsets.UTF_8),
                "comma-separated, decimal point, UTF-8, LF line ends",
                false);
    }

    @Test
    void carriageReturnsAndByteOrderMark() throws IOException {
        assertReadAs(
                rewritten(csv -> "\uFEFF" + csv.replace("\n", "\r\n"), StandardCharsets.UTF_8),
                "comma-separated, decimal point, UTF-8 with byte-order mark, CRLF line ends",
                false);
    }

    @Test
    void carriageReturnsAlone() throws IOException {
        assertReadAs(
                rewritten(csv -> csv.replace('\n', '\r'), StandardCharsets.UTF_8),
                "comma-separated, decimal point, UTF-8, CR line ends",
                false);
    }

    @Test
    void semicolonsWithDecimalCommas() throws IOException {
        assertReadAs(
                rewritten(csv -> csv.replace(',', ';').replace('.', ','), StandardCharsets.UTF_8),
                "semicolon-separated, decimal comma, UTF-8, LF line ends",
                true);
    }

    @Test
    void semicolonsWithDecimalPoints() throws IOException {
        assertReadAs(
                rewritten(csv -> csv.replace(',', ';'), StandardCharsets.UTF_8),
                "semicolon-separated, decimal point, UTF-8, LF line ends",
                true);
    }

    @Test
    void tabs() throws IOException {
        assertReadAs(
                rewritten(csv -> csv.replace(',', '\t'), StandardCharsets.UTF_8),
                "tab-separated, decimal point, UTF-8, LF line ends",
                true);
    }

    @Test
    void unicodeTextOfASpreadsheet() throws IOException {
        assertReadAs(
                rewritten(csv -> "\uFEFF" + csv.replace(',', '\t').replace("\n", "\r\n"), StandardCharsets.UTF_16LE),
                "tab-separated, decimal point, UTF-16LE with byte-order mark, CRLF line ends",
                true);
    }

    @Test
    void aLineThatNamesTheSeparator() throws IOException {
        TestReading reading =
                rewritten(csv -> "sep=;\r\n" + csv.replace(',', ';').replace("\n", "\r\n"), StandardCharsets.UTF_8);

        assertReadAs(reading, "semicolon-separated, decimal point, UTF-8, CRLF line ends", true);
    }

    @Test
    void quotedCellsWithDecimalCommas() throws IOException {
        assertReadAs(
                rewritten(csv -> csv.replaceAll("(\\d+)\\.(\\d+)", "\"$1,$2\""), StandardCharsets.UTF_8),
                "comma-separated, decimal comma, UTF-8, LF line ends",
                true);
    }

    @Test
    void blankRowsAtTheEnd() throws IOException {
        assertReadAs(
                rewritten(
                        csv -> csv + ",".repeat(csv.split("\n")[0].split(",").length - 1) + "\n\n\n",
                        StandardCharsets.UTF_8),
                "comma-separated, decimal point, UTF-8, LF line ends",
                false);
    }

    @Test
    void noLineEndAfterTheLastRow() throws IOException {
        assertReadAs(
                rewritten(csv -> csv.substring(0, csv.length() - 1), StandardCharsets.UTF_8),
                "comma-separated, decimal point, UTF-8, LF line ends",
                false);
    }
}
