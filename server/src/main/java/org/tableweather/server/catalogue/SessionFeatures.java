package org.tableweather.server.catalogue;

import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.schema.record.SessionRecord;

/** Stores what filters ask of a session beside its own columns: equipment, and the span of each measure of the air. */
final class SessionFeatures {
    private static final String UPDATE = """
            UPDATE session s SET playing_length_mm = f.playing_length_mm, wool_pct = f.wool_pct, cloth_age_days = f.cloth_age_days
            FROM unnest(?::int[], ?::float8[], ?::float8[], ?::float8[])
                 AS f(id, playing_length_mm, wool_pct, cloth_age_days)
            WHERE s.id = f.id
            """;
    private static final String INSERT = """
            INSERT INTO session_measure (session_id, measure, low, high)
            SELECT * FROM unnest(?::int[], ?::text[], ?::float8[], ?::float8[])
            """;

    private final Connection connection;

    SessionFeatures(Connection connection) {
        this.connection = connection;
    }

    /**
     * The span of a session's air; not finite when nothing is known.
     *
     * @param lowC lowest temperature, °C
     * @param highC highest, °C
     * @param lowPct lowest relative humidity, %
     * @param highPct highest, %
     */
    record Air(double lowC, double highC, double lowPct, double highPct) {
        boolean isKnown() {
            return Double.isFinite(lowC)
                    && Double.isFinite(highC)
                    && Double.isFinite(lowPct)
                    && Double.isFinite(highPct);
        }
    }

    /**
     * A session.
     *
     * @param id its number
     * @param entry with all it refers to
     * @param air of its trials
     */
    record Row(int id, SessionRecord entry, Air air) {}

    private record Measured(int id, AirMeasure measure, AirMeasure.Span span) {}

    /** Stores the features of sessions that have been stored and have none yet. */
    void store(List<Row> rows) throws SQLException {
        List<SessionTraits> traits =
                rows.stream().map(row -> SessionTraits.of(row.entry())).toList();
        try (PreparedStatement update = connection.prepareStatement(UPDATE)) {
            update.setArray(1, array("int4", rows, Row::id));
            update.setArray(2, array("float8", traits, of -> stated(of.playingLengthMm())));
            update.setArray(3, array("float8", traits, of -> stated(of.woolPct())));
            update.setArray(4, array("float8", traits, of -> stated(of.clothAgeDays())));
            update.executeUpdate();
        }
        List<Measured> measured = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            add(rows.get(i), traits.get(i), measured);
        }
        try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
            insert.setArray(1, array("int4", measured, Measured::id));
            insert.setArray(2, array("text", measured, one -> one.measure().storedName()));
            insert.setArray(3, array("float8", measured, one -> one.span().low()));
            insert.setArray(4, array("float8", measured, one -> one.span().high()));
            insert.executeUpdate();
        }
    }

    private static void add(Row row, SessionTraits traits, List<Measured> measured) {
        Air air = row.air();
        if (!air.isKnown()) {
            return;
        }
        for (AirMeasure measure : AirMeasure.values()) {
            measure.span(air.lowC(), air.highC(), air.lowPct(), air.highPct(), traits)
                    .ifPresent(span -> measured.add(new Measured(row.id(), measure, span)));
        }
    }

    private static Double stated(double value) {
        return Double.isNaN(value) ? null : value;
    }

    private <T> Array array(String type, List<T> rows, Function<T, Object> column) throws SQLException {
        return connection.createArrayOf(type, rows.stream().map(column).toArray());
    }
}
