package org.tableweather.server.catalogue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyOut;

/**
 * Trials as CSV: the database writes the rows itself (COPY), here each gets its room and session before it. So a number has the
 * fewest digits that tell it apart.
 *
 * @source RFC4180
 */
final class TrialCsv {
    /** Names of the columns. */
    static final List<String> HEADER = Stream.concat(
                    Stream.of("room", "session_id", "session_key", "ordinal"),
                    TrialColumn.all().stream().map(TrialColumn::sqlName))
            .toList();

    private static final int LEAST_AT_ONCE = 4000;
    private static final int TRIALS_AT_ONCE = 50_000;
    private static final byte[] LINE_END = {'\r', '\n'};
    private static final String COLUMNS = ", t.ordinal, "
            + TrialColumn.all().stream().map(TrialCsv::sql).collect(Collectors.joining(", ")) + " FROM trial t";

    private final OutputStream out;
    private final long most;
    private long written;
    private int session = -1;
    private byte[] beforeRow = {};

    private TrialCsv(OutputStream out, long most) {
        this.out = out;
        this.most = most;
    }

    /**
     * Writes header and rows.
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
        TrialCsv csv = new TrialCsv(out, most);
        out.write(String.join(",", HEADER).getBytes(StandardCharsets.UTF_8));
        out.write(LINE_END);
        trials.walk(
                filter, after, (int) Math.min(Math.max(most, LEAST_AT_ONCE), TRIALS_AT_ONCE), listening, csv::batch);
    }

    private static String sql(TrialColumn column) {
        return "t." + column.sqlName() + (column == TrialColumn.MADE ? "::text" : "");
    }

    private boolean batch(TrialReading reading, TrialBatch batch, Trials.Position after)
            throws SQLException, IOException {
        boolean looks = batch.needsMeasures();
        String select = "SELECT t.session_id" + (looks ? ", t.climate_temp_c, t.climate_rh_pct" : "") + COLUMNS;
        for (SessionRun run : SessionRun.of(batch.ids())) {
            String sql = reading.literal(select, run, Trials.from(batch, after), Trials.ORDER);
            if (!copy(reading.postgres(), sql, batch, looks)) {
                return false;
            }
        }
        return true;
    }

    private boolean copy(PGConnection postgres, String sql, TrialBatch batch, boolean looks)
            throws SQLException, IOException {
        CopyOut copy = postgres.getCopyAPI().copyOut("COPY (" + sql + ") TO STDOUT (FORMAT csv)");
        try {
            for (byte[] row = copy.readFromCopy(); row != null; row = copy.readFromCopy()) {
                int start = looks ? CsvStart.passing(row, batch) : CsvStart.afterComma(row, 0);
                if (start > 0) {
                    write(row, start, batch.sessions());
                    if (written == most) {
                        return false;
                    }
                }
            }
            return true;
        } finally {
            drain(copy);
        }
    }

    /** A cancelled copy may be cancelled too late and end what comes after it; the rest of a few sessions is soon read. */
    private static void drain(CopyOut copy) throws SQLException {
        while (copy.isActive() && copy.readFromCopy() != null) {
            // not wanted any more
        }
    }

    private void write(byte[] row, int start, Map<Integer, Candidate> sessions) throws IOException {
        int id = CsvStart.number(row);
        if (id != session) {
            session = id;
            Candidate candidate = sessions.get(id);
            beforeRow = (quoted(candidate.room()) + "," + id + "," + quoted(candidate.key()) + ",")
                    .getBytes(StandardCharsets.UTF_8);
        }
        out.write(beforeRow);
        int ordinal = CsvStart.afterComma(row, start);
        int time = CsvStart.afterField(row, ordinal);
        int behindTime = CsvStart.afterComma(row, time);
        int rest = start;
        if (behindTime - 1 > time) {
            int zone = CsvStart.utc(row, time, behindTime - 1);
            out.write(row, start, zone - start);
            out.write('Z');
            rest = behindTime - 1;
        }
        out.write(row, rest, row.length - 1 - rest);
        out.write(LINE_END);
        written++;
    }

    private static String quoted(String text) {
        boolean plain = text.chars().noneMatch(character -> character == ',' || character == '"' || character < ' ');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }
}
