package org.tableweather.server.catalogue;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.stream.Collectors;
import org.postgresql.PGConnection;

/** Conditions joined by AND, with their values apart. */
final class Where {
    private final List<String> conditions = new ArrayList<>();
    private final List<Object> values = new ArrayList<>();

    /**
     * Adds a condition.
     *
     * @param condition SQL of ours with a {@code ?} for each value
     * @param ofCondition the values
     */
    Where and(String condition, Object... ofCondition) {
        conditions.add("(" + condition + ")");
        values.addAll(List.of(ofCondition));
        return this;
    }

    /** Adds what other conditions say together; nothing when there are none. */
    Where and(Where other) {
        return other.conditions.isEmpty() ? this : and("", other, "");
    }

    /**
     * Adds other conditions inside more SQL of ours.
     *
     * @param before SQL before them
     * @param other the conditions
     * @param after SQL after them
     */
    Where and(String before, Where other, String after) {
        conditions.add("(" + before + other.sql() + after + ")");
        values.addAll(other.values);
        return this;
    }

    /** Whether there are none. */
    boolean isEmpty() {
        return conditions.isEmpty();
    }

    /** SQL with the values in it, for COPY, which takes no parameters. */
    String literal(PGConnection connection) throws SQLException {
        StringBuilder text = new StringBuilder();
        Iterator<Object> next = values.iterator();
        for (char character : sql().toCharArray()) {
            text.append(character == '?' ? literal(connection, next.next()) : String.valueOf(character));
        }
        return text.toString();
    }

    private static String literal(PGConnection connection, Object value) throws SQLException {
        if (value instanceof Integer[] numbers) {
            return "'{" + Arrays.stream(numbers).map(String::valueOf).collect(Collectors.joining(",")) + "}'::int[]";
        }
        if (value instanceof Double number) {
            return "'" + number + "'::float8";
        }
        if (value instanceof OffsetDateTime time) {
            return "'" + time + "'::timestamptz";
        }
        if (value instanceof Integer number) {
            return number.toString();
        }
        return "'" + connection.escapeLiteral(value.toString()) + "'";
    }

    /** The same conditions, to be added to. */
    Where copy() {
        Where copy = new Where();
        copy.conditions.addAll(conditions);
        copy.values.addAll(values);
        return copy;
    }

    String sql() {
        return String.join(" AND ", conditions);
    }

    /**
     * Sets the values.
     *
     * @param first number of the first parameter
     * @return number of the next parameter
     */
    int set(PreparedStatement statement, int first) throws SQLException {
        int parameter = first;
        for (Object value : values) {
            statement.setObject(parameter++, value);
        }
        return parameter;
    }
}
