package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Counts what a filter asks for. Where a whole session passes, the counts of its shots suffice; trials are read only of sessions that
 * a bound cuts through, and of a sample for the quantiles.
 */
@ApplicationScoped
class TrialSummaries {
    /** Most trials that quantiles are taken from. */
    static final int SAMPLE = 100_000;

    private static final int AT_ONCE = 50_000;
    private static final String PLACES = """
            SELECT s.id, r.key, coalesce(r.country, 'unknown'), r.contributor,
                   (s.rh_min_pct + s.rh_max_pct) / 2, (s.temp_min_c + s.temp_max_c) / 2, x.shot, x.kind, x.trials
            FROM session s JOIN room r ON r.id = s.room_id JOIN session_shot x ON x.session_id = s.id
            WHERE
            """;
    private static final String AIR = "SELECT t.session_id, t.climate_temp_c, t.climate_rh_pct, t.shot, ";
    private static final int FIRST_RESPONSE = 5;
    private static final String RESPONSES = ResponseSample.RESPONSES.stream()
            .map(column -> "t." + column.sqlName())
            .collect(Collectors.joining(", "));

    private final Trials trials;

    TrialSummaries(Trials trials) {
        this.trials = trials;
    }

    /** A part of the trials of a session. */
    private record Part(int session, String shot, String kind) {}

    /**
     * Counts.
     *
     * @param listening asked now and then
     */
    TrialSummary of(CatalogueFilter filter, ClientStream.Listening listening) {
        SummaryCounts counts = new SummaryCounts();
        Map<Integer, Candidate> candidates = new LinkedHashMap<>();
        try {
            trials.walk(filter, Trials.Position.START, AT_ONCE, listening, (reading, batch, after) -> {
                candidates.putAll(batch.sessions());
                count(reading, batch, counts);
                return true;
            });
            ResponseSample sample = new ResponseSample();
            if (counts.trials() > 0) {
                sample(filter, candidates, counts.trials(), listening, sample);
            }
            return counts.with(sample.responses(), sample.trials());
        } catch (IOException e) {
            throw new UncheckedIOException("the summary cannot be made", e);
        }
    }

    private static void count(TrialReading reading, TrialBatch batch, SummaryCounts counts)
            throws SQLException, IOException {
        Map<Part, Long> cut = cut(reading, batch);
        Where where = new Where().and("s.id = ANY (?)", (Object) batch.ids().toArray(Integer[]::new));
        batch.filter().shots("x").ifPresent(where::and);
        reading.query(PLACES + where.sql(), where, row -> {
            SummaryCounts.Place place = place(row);
            Part part = new Part(place.id(), row.getString(7), row.getString(8));
            boolean whole = batch.sessions().get(place.id()).whole();
            long passing = whole ? row.getLong(9) : cut.getOrDefault(part, 0L);
            if (passing > 0) {
                counts.add(place, part.shot(), part.kind(), passing);
            }
            return true;
        });
    }

    private static SummaryCounts.Place place(ResultSet row) throws SQLException {
        return new SummaryCounts.Place(
                row.getInt(1),
                row.getString(2),
                row.getString(3),
                row.getString(4),
                Trials.number(row, 5),
                Trials.number(row, 6));
    }

    /** Trials that pass of sessions that a bound cuts through. */
    private static Map<Part, Long> cut(TrialReading reading, TrialBatch batch) throws SQLException, IOException {
        TrialBatch sessions = batch.only(session -> !session.whole());
        Map<Part, Long> parts = new HashMap<>();
        if (!sessions.sessions().isEmpty()) {
            reading.rows(AIR + "t.kind FROM trial t", sessions.ids(), sessions.where(), "", row -> {
                if (sessions.passes(row.getInt(1), Trials.number(row, 2), Trials.number(row, 3))) {
                    parts.merge(new Part(row.getInt(1), row.getString(4), row.getString(5)), 1L, Long::sum);
                }
                return true;
            });
        }
        return parts;
    }

    private void sample(
            CatalogueFilter filter,
            Map<Integer, Candidate> candidates,
            long all,
            ClientStream.Listening listening,
            ResponseSample sample)
            throws IOException {
        if (all <= SAMPLE) {
            trials.walk(filter, Trials.Position.START, AT_ONCE, listening, (reading, batch, after) -> {
                String select = AIR + RESPONSES + " FROM trial t";
                return reading.rows(select, batch.ids(), batch.where(), "", row -> add(row, batch, sample));
            });
        } else {
            TrialBatch batch = new TrialBatch(filter, candidates);
            trials.once(reading -> reading.sampled(
                    AIR + RESPONSES, batch.ids(), batch.where(), 100.0 * SAMPLE / all, row -> add(row, batch, sample)));
        }
    }

    private static boolean add(ResultSet row, TrialBatch batch, ResponseSample sample) throws SQLException {
        if (batch.passes(row.getInt(1), Trials.number(row, 2), Trials.number(row, 3))) {
            sample.add(row.getString(4), row, FIRST_RESPONSE);
        }
        return true;
    }
}
