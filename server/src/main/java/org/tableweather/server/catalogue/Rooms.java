package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Array;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;

/** Reads rooms that have something published. */
@ApplicationScoped
class Rooms {
    private static final String SELECT = """
            SELECT r.key, r.name, r.country, r.latitude, r.longitude, r.altitude_m, r.climate_control,
                   count(*), sum(s.trials), bool_or(s.invented)
            FROM room r JOIN session s ON s.room_id = r.id
            """;

    private final DataSource database;

    Rooms(DataSource database) {
        this.database = database;
    }

    /**
     * Rooms by key.
     *
     * @param after key of the last one before; empty for the first
     * @param limit most rows; 0 for all
     */
    List<RoomView> list(CatalogueFilter filter, String after, int limit) {
        Where where = filter.sessions().and("r.key > ?", after);
        String sql = SELECT + " WHERE " + where.sql() + " GROUP BY r.id ORDER BY r.key"
                + (limit > 0 ? " LIMIT " + limit : "");
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            where.set(select, 1);
            try (ResultSet row = select.executeQuery()) {
                List<RoomView> rooms = new ArrayList<>();
                while (row.next()) {
                    rooms.add(room(row));
                }
                return rooms;
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the rooms cannot be read", e);
        }
    }

    private static RoomView room(ResultSet row) throws SQLException {
        return new RoomView(
                row.getString(1),
                Optional.ofNullable(row.getString(2)),
                Optional.ofNullable(row.getString(3)),
                Optional.ofNullable(row.getObject(4, Double.class)),
                Optional.ofNullable(row.getObject(5, Double.class)),
                Optional.ofNullable(row.getObject(6, Double.class)),
                texts(row.getArray(7)),
                row.getLong(8),
                row.getLong(9),
                row.getBoolean(10));
    }

    private static List<String> texts(Array array) throws SQLException {
        return Arrays.asList((String[]) array.getArray());
    }
}
