package org.tableweather.release;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * DuckDB in memory, which reads what we wrote.
 *
 * @param database open until it is closed
 * @source DuckDB
 */
record Duck(Connection database) implements AutoCloseable {

    static Duck open() throws SQLException {
        return new Duck(DriverManager.getConnection("jdbc:duckdb:"));
    }

    /** All rows of a question. */
    List<List<Object>> rows(String sql) throws SQLException {
        try (Statement statement = database.createStatement();
                ResultSet result = statement.executeQuery(sql)) {
            List<List<Object>> rows = new ArrayList<>();
            int columns = result.getMetaData().getColumnCount();
            while (result.next()) {
                List<Object> row = new ArrayList<>();
                for (int i = 1; i <= columns; i++) {
                    row.add(result.getObject(i));
                }
                rows.add(row);
            }
            return rows;
        }
    }

    @Override
    public void close() throws SQLException {
        database.close();
    }
}
