package org.tableweather.server.catalogue;

import de.siegmar.fastcsv.writer.CsvWriter;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;

/** CSV as it is written to the client, row by row. */
final class CsvBody {
    private CsvBody() {}

    /** Writes rows after the header. */
    @FunctionalInterface
    interface Rows {
        void writeTo(CsvWriter csv) throws IOException;
    }

    /**
     * A body of a header and rows.
     *
     * @source RFC4180
     */
    static StreamingOutput of(List<String> header, Rows rows) {
        return output -> {
            CsvWriter csv = CsvWriter.builder()
                    .build(new BufferedWriter(new OutputStreamWriter(output, StandardCharsets.UTF_8), 1 << 16));
            csv.writeRecord(header);
            rows.writeTo(csv);
            csv.flush();
        };
    }

    /** A body of rows that are at hand. */
    static StreamingOutput of(List<String> header, Stream<List<String>> rows) {
        return of(header, csv -> rows.forEachOrdered(csv::writeRecord));
    }
}
