package org.tableweather.schema.folder;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.csv.CsvText;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.json.ContributionJson;

/** Reads single files of a contribution again that passed the checks. */
final class SecondReading {
    private SecondReading() {}

    /** What {@code contribution.json} says; nothing when there is none. */
    static ContributionDocument document(ContributionSource source) throws IOException {
        Optional<InputStream> opened = source.open(ContributionJson.FILE);
        if (opened.isEmpty()) {
            return ContributionDocument.NOTHING;
        }
        try (InputStream in = opened.get()) {
            return ContributionDocument.read(in, new Findings());
        }
    }

    /** Reads the rows of one CSV file; none when there is no such file. */
    static void rows(ContributionSource source, String file, Set<String> known, CheckedRows rows) throws IOException {
        Optional<InputStream> opened = source.open(file);
        if (opened.isEmpty()) {
            return;
        }
        try (InputStream in = opened.get()) {
            CsvText.open(in, known, bytes -> {}).read(rows);
        } catch (CsvText.Broken e) {
            throw new IOException(file + " cannot be read: " + e.getMessage(), e);
        }
    }
}
