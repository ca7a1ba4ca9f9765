package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;

/** How much is published of each shot. */
@ApplicationScoped
public class ShotCounts {
    private static final String SELECT = """
            SELECT x.shot, x.kind, sum(x.trials), count(DISTINCT s.id), count(DISTINCT s.room_id)
            FROM session_shot x JOIN session s ON s.id = x.session_id
            WHERE s.published GROUP BY x.shot, x.kind ORDER BY x.shot, x.kind
            """;

    private final DataSource database;

    ShotCounts(DataSource database) {
        this.database = database;
    }

    /**
     * One shot's counts.
     *
     * @param shot id
     * @param kind of its trials
     * @param trials attempts
     * @param sessions how many
     * @param rooms how many
     */
    public record ShotCount(String shot, String kind, long trials, long sessions, long rooms) {}

    /** All shots that some published session has, by id. */
    public List<ShotCount> all() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(SELECT)) {
            List<ShotCount> counts = new ArrayList<>();
            while (row.next()) {
                counts.add(new ShotCount(
                        row.getString(1), row.getString(2), row.getLong(3), row.getLong(4), row.getLong(5)));
            }
            return counts;
        } catch (SQLException e) {
            throw new IllegalStateException("the shots cannot be counted", e);
        }
    }
}
