package org.tableweather.server.catalogue;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.api.migration.BaseJavaMigration;
import org.flywaydb.core.api.migration.Context;

/** Gives the sessions that were here before V008 what it added; the formulas of moist air and cloth are not SQL. */
public final class V008_1__SessionMeasures extends BaseJavaMigration {
    private static final int AT_ONCE = 1000;
    private static final String COMPLETE = """
            UPDATE session s SET climate_complete = true
            FROM (SELECT session_id FROM trial GROUP BY session_id
                  HAVING bool_and(climate_temp_c IS NOT NULL AND climate_rh_pct IS NOT NULL)) known
            WHERE known.session_id = s.id
            """;
    private static final String SESSIONS = """
            SELECT id, temp_min_c, temp_max_c, rh_min_pct, rh_max_pct, record FROM session WHERE id > ? ORDER BY id LIMIT
            """ + AT_ONCE;

    @Override
    public void migrate(Context context) throws SQLException {
        Connection connection = context.getConnection();
        try (Statement complete = connection.createStatement()) {
            complete.executeUpdate(COMPLETE);
        }
        List<SessionFeatures.Row> rows = after(connection, 0);
        while (!rows.isEmpty()) {
            new SessionFeatures(connection).store(rows);
            rows = after(connection, rows.get(rows.size() - 1).id());
        }
    }

    private static List<SessionFeatures.Row> after(Connection connection, int last) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(SESSIONS)) {
            select.setInt(1, last);
            List<SessionFeatures.Row> rows = new ArrayList<>();
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    SessionFeatures.Air air =
                            new SessionFeatures.Air(number(row, 2), number(row, 3), number(row, 4), number(row, 5));
                    rows.add(new SessionFeatures.Row(row.getInt(1), RecordJson.session(row.getString(6)), air));
                }
            }
            return rows;
        }
    }

    private static double number(ResultSet row, int column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? Double.NaN : value;
    }
}
