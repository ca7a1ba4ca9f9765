package org.tableweather.cli;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;

/** Rows as CSV text (RFC 4180 with line feeds). */
final class CsvLines {
    private CsvLines() {}

    /** Header and rows. */
    static String of(List<String> header, List<List<String>> rows) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            csv.writeRecord(header);
            rows.forEach(csv::writeRecord);
        } catch (IOException e) {
            throw new UncheckedIOException("a string can be written", e);
        }
        return text.toString();
    }
}
