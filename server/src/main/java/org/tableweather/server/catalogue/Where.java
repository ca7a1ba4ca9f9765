package org.tableweather.server.catalogue;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

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
