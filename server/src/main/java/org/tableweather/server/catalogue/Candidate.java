package org.tableweather.server.catalogue;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;

/**
 * A session that may hold trials asked for.
 *
 * @param id its number
 * @param room key of its room
 * @param key its name over all contributions
 * @param trials how many it has
 * @param startedAt first known time; null when there is none
 * @param whole whether all of its trials pass that have the right shot and kind
 * @param traits of cloth and bed, when they are needed
 */
record Candidate(
        int id,
        String room,
        String key,
        long trials,
        OffsetDateTime startedAt,
        boolean whole,
        Optional<SessionTraits> traits) {

    /**
     * Selects candidates: to be followed by conditions.
     *
     * @param whole the values of {@link CatalogueFilter#whole}, before those of the conditions
     */
    static String select(CatalogueFilter filter, Where whole) {
        String isWhole = whole.isEmpty() ? "true" : "coalesce(" + whole.sql() + ", false)";
        String entry = filter.needsMeasures() ? "CASE WHEN NOT w.whole THEN s.record END" : "NULL::json";
        return "SELECT s.id, r.key, s.key, s.trials, s.started_at, w.whole, " + entry
                + " FROM session s JOIN room r ON r.id = s.room_id CROSS JOIN LATERAL (SELECT " + isWhole
                + " AS whole) w WHERE ";
    }

    static Candidate read(ResultSet row) throws SQLException {
        return new Candidate(
                row.getInt(1),
                row.getString(2),
                row.getString(3),
                row.getLong(4),
                row.getObject(5, OffsetDateTime.class),
                row.getBoolean(6),
                Optional.ofNullable(row.getString(7)).map(RecordJson::session).map(SessionTraits::of));
    }

    /** Whether a trial's air lies inside the bounds of measures that no column holds. */
    boolean passes(Map<FilterRange, Bounds> ranges, double tempC, double rhPct) {
        if (whole || traits.isEmpty()) {
            return true;
        }
        return ranges.entrySet().stream()
                .allMatch(bound -> bound.getKey()
                        .measure()
                        .map(measure -> bound.getValue().hold(measure.value(tempC, rhPct, traits.get())))
                        .orElse(true));
    }
}
