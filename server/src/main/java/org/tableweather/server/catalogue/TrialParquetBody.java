package org.tableweather.server.catalogue;

import java.io.IOException;
import java.io.OutputStream;
import java.sql.SQLException;
import java.util.Map;
import org.tableweather.release.TrialParquet;
import org.tableweather.schema.record.SessionRecord;

/** Trials as a Parquet file that stands alone: what a release has, and every row's session as JSON. */
final class TrialParquetBody {
    private static final int AT_ONCE = 50_000;
    private static final int FIRST = 4;
    private static final String TRIALS =
            "SELECT t.session_id, t.climate_temp_c, t.climate_rh_pct, " + TrialColumn.sqlNames() + " FROM trial t";

    private TrialParquetBody() {}

    /**
     * Writes the rows.
     *
     * @param after where to go on
     * @param most rows
     */
    static void write(
            Trials trials,
            CatalogueFilter filter,
            Trials.Position after,
            long most,
            OutputStream out,
            ClientStream.Listening listening)
            throws IOException {
        Kept kept = new Kept(out);
        long[] left = {most};
        try (TrialParquet.Writer parquet = TrialParquet.writer(kept)) {
            try {
                trials.walk(
                        filter,
                        after,
                        AT_ONCE,
                        listening,
                        (reading, batch, from) -> rows(reading, batch, from, left, parquet));
            } catch (IOException | RuntimeException e) {
                kept.drop();
                throw e;
            }
        }
    }

    private static boolean rows(
            TrialReading reading, TrialBatch batch, Trials.Position from, long[] left, TrialParquet.Writer parquet)
            throws SQLException, IOException {
        Map<Integer, SessionRecord> entries = reading.entries(batch.ids());
        return reading.rows(TRIALS, batch.ids(), Trials.from(batch, from), Trials.ORDER, row -> {
            int id = row.getInt(1);
            if (!batch.passes(id, Trials.number(row, 2), Trials.number(row, 3))) {
                return true;
            }
            SessionRecord entry = entries.get(id);
            int all = Math.toIntExact(batch.sessions().get(id).trials());
            parquet.write(entry, all, TrialRow.read(row, FIRST, entry.session().id()));
            return --left[0] > 0;
        });
    }

    /** Stays open, and takes no footer behind a body that broke off: what looks complete is. */
    private static final class Kept extends OutputStream {
        private OutputStream out;

        Kept(OutputStream out) {
            this.out = out;
        }

        void drop() {
            out = OutputStream.nullOutputStream();
        }

        @Override
        public void write(int b) throws IOException {
            out.write(b);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            out.write(bytes, from, length);
        }

        @Override
        public void flush() throws IOException {
            out.flush();
        }
    }
}
