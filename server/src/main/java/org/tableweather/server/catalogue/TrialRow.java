package org.tableweather.server.catalogue;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Trial;

/** Reads a stored trial back: the exact record that was stored, times to the microsecond. */
final class TrialRow {
    private static final int CLIMATE_COLUMNS = 3;

    private TrialRow() {}

    /**
     * The trial at the cursor.
     *
     * @param row whose columns from {@code first} on are {@link TrialColumn#all()} in order
     * @param first number of the first of them, from 1
     * @param session id of its session within the contribution
     */
    static Trial read(ResultSet row, int first, String session) throws SQLException {
        int c = first;
        return new Trial(
                session,
                row.getString(c++),
                instant(row, c++),
                Kind.of(row.getString(c++)).orElseThrow(),
                row.getString(c++),
                text(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                made(row, c++),
                count(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                number(row, c++),
                count(row, c++),
                number(row, c++),
                number(row, c++),
                text(row, c++),
                climate(row, c),
                uncertainty(row, c + CLIMATE_COLUMNS));
    }

    private static OutcomeUncertainty uncertainty(ResultSet row, int first) throws SQLException {
        int c = first;
        return new OutcomeUncertainty(
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c++),
                        number(row, c))
                .orNone();
    }

    private static Climate climate(ResultSet row, int first) throws SQLException {
        String source = row.getString(first + 2);
        return new Climate(
                number(row, first), number(row, first + 1), ClimateSource.valueOf(source.toUpperCase(Locale.ROOT)));
    }

    private static double number(ResultSet row, int column) throws SQLException {
        double value = row.getDouble(column);
        return row.wasNull() ? Double.NaN : value;
    }

    private static int count(ResultSet row, int column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? -1 : value;
    }

    private static String text(ResultSet row, int column) throws SQLException {
        String value = row.getString(column);
        return value == null ? "" : value;
    }

    private static Made made(ResultSet row, int column) throws SQLException {
        boolean value = row.getBoolean(column);
        if (row.wasNull()) {
            return Made.NOT_STATED;
        }
        return value ? Made.YES : Made.NO;
    }

    private static Optional<Instant> instant(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getObject(column, OffsetDateTime.class)).map(OffsetDateTime::toInstant);
    }
}
