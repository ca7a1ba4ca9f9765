package org.tableweather.server.catalogue;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;

/** Rooms and tables, and whose they are. */
final class RoomTable {
    private static final String BIND = """
            INSERT INTO room (key, account_id, name, country, latitude, longitude, altitude_m, climate_control)
            VALUES (?, ?, ?, ?, ?, ?, ?, ?)
            ON CONFLICT (key) DO UPDATE
            SET name = excluded.name, country = excluded.country, latitude = excluded.latitude,
                longitude = excluded.longitude, altitude_m = excluded.altitude_m,
                climate_control = excluded.climate_control
            WHERE room.account_id = excluded.account_id
            RETURNING id
            """;
    private static final String INSERT_TABLE = """
            INSERT INTO pool_table (contribution_id, room_id, local_id, record) VALUES (?, ?, ?, ?::json)
            ON CONFLICT DO NOTHING RETURNING id
            """;

    private final Connection connection;

    RoomTable(Connection connection) {
        this.connection = connection;
    }

    /**
     * Binds a room to its first account, or finds it there.
     *
     * @return the room's number; empty when it is another account's
     */
    OptionalInt bind(String key, long accountId, Room room) throws SQLException {
        Room coarse = PublicPosition.rounded(room);
        try (PreparedStatement insert = connection.prepareStatement(BIND)) {
            insert.setString(1, key);
            insert.setLong(2, accountId);
            insert.setString(3, coarse.name().orElse(null));
            insert.setString(4, coarse.country().orElse(null));
            set(insert, 5, coarse.latitude());
            set(insert, 6, coarse.longitude());
            set(insert, 7, coarse.altitudeM());
            insert.setArray(
                    8, connection.createArrayOf("text", coarse.climateControl().toArray()));
            return id(insert);
        }
    }

    /**
     * Adds a table.
     *
     * @return its number; empty when the contribution names it twice, which the checks refuse
     */
    OptionalInt add(long contributionId, int roomId, PoolTable table) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(INSERT_TABLE)) {
            insert.setLong(1, contributionId);
            insert.setInt(2, roomId);
            insert.setString(3, table.id());
            insert.setString(4, RecordJson.write(table));
            return id(insert);
        }
    }

    private static OptionalInt id(PreparedStatement insert) throws SQLException {
        try (ResultSet row = insert.executeQuery()) {
            return row.next() ? OptionalInt.of(row.getInt(1)) : OptionalInt.empty();
        }
    }

    private static void set(PreparedStatement statement, int parameter, OptionalDouble value) throws SQLException {
        if (value.isPresent()) {
            statement.setDouble(parameter, value.getAsDouble());
        } else {
            statement.setNull(parameter, Types.DOUBLE);
        }
    }
}
