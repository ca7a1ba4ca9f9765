package org.tableweather.schema.logger;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.tableweather.schema.csv.Decimals;
import org.tableweather.schema.csv.RowHandler;

/** Reads the rows of a log: the times as texts, the rest as numbers. */
final class LogRows extends RowHandler {
    private static final int PREAMBLE = 200;

    private final LogOptions options;
    private final Decimals decimals = new Decimals();
    private final List<String> guesses = new ArrayList<>();
    private List<String> header = List.of();
    private List<String> firstRow = List.of();
    private LogColumns columns;
    private LogNotUnderstood fault;
    private String[] cells = new String[0];

    final List<String> times = new ArrayList<>();
    private double[] numbers = new double[3 * 256];
    private long[] rows = new long[256];
    private final List<LogReport.Row> unreadable = new ArrayList<>();
    private long unreadableCount;
    private long read;

    LogRows(LogOptions options) {
        this.options = options;
    }

    @Override
    protected boolean isHeader(List<String> names) {
        if (firstRow.isEmpty()) {
            firstRow = List.copyOf(names);
        }
        return row() <= PREAMBLE && LogColumns.isHeader(names, options);
    }

    @Override
    protected void header(List<String> names, long row) {
        header = names;
        cells = new String[names.size() + 1];
        if (row > 1) {
            guesses.add("the header is row " + row);
        }
    }

    @Override
    protected void begin() {
        Arrays.fill(cells, "");
    }

    @Override
    protected void cell(int column, char[] buffer, int from, int to) {
        cells[column] = new String(buffer, from, to - from);
    }

    @Override
    protected void extraCell(int column, char[] buffer, int from, int to) {
        if (column < cells.length) {
            cell(column, buffer, from, to);
        }
    }

    @Override
    protected void end(int count, int extra) {
        if (fault != null) {
            return;
        }
        if (columns == null) {
            findColumns(count);
        }
        read++;
        if (columns == null) {
            return;
        }
        String time =
                String.join(" ", columns.time().stream().map(at -> cells[at]).toList());
        double temp = number(columns.temp(), "temperature");
        double rh = Double.isNaN(temp) ? Double.NaN : number(columns.rh(), "humidity");
        if (Double.isNaN(temp) || Double.isNaN(rh)) {
            return;
        }
        double pressure = columns.pressure() < 0 ? Double.NaN : decimals.parse(cells[columns.pressure()]);
        keep(time, temp, rh, pressure);
    }

    private void findColumns(int count) {
        List<String> names = header;
        if (count == header.size() + 1) {
            names = new ArrayList<>(List.of("(row number)"));
            names.addAll(header);
            guesses.add(
                    "the header names one column fewer than the rows have: the first is a row number without a name");
        }
        try {
            columns = LogColumns.find(names, options);
            guesses.addAll(columns.guesses());
        } catch (LogNotUnderstood e) {
            fault = e;
        }
    }

    private double number(int column, String quantity) {
        String text = cells[column];
        double value = text.isEmpty() ? Double.NaN : decimals.parse(text);
        if (Double.isNaN(value)) {
            leaveOut(row(), columns.names().get(column), text, "no " + quantity);
        }
        return value;
    }

    void leaveOut(long row, String column, String value, String reason) {
        unreadableCount++;
        if (unreadable.size() < LogReport.KEPT) {
            unreadable.add(new LogReport.Row(row, column, value, reason));
        }
    }

    private void keep(String time, double temp, double rh, double pressure) {
        int size = times.size();
        if (size == rows.length) {
            rows = Arrays.copyOf(rows, size * 2);
            numbers = Arrays.copyOf(numbers, size * 6);
        }
        rows[size] = row();
        numbers[3 * size] = temp;
        numbers[3 * size + 1] = rh;
        numbers[3 * size + 2] = pressure;
        times.add(time);
    }

    /** The columns that were found. */
    LogColumns columns() throws LogNotUnderstood {
        if (fault != null) {
            throw fault;
        }
        if (columns == null) {
            throw new LogNotUnderstood(
                    header.isEmpty()
                            ? "no row looks like a header with a time and something measured; the first row is "
                                    + firstRow + ": name the columns"
                            : "the log has no row below its header " + header);
        }
        return columns;
    }

    long row(int index) {
        return rows[index];
    }

    double temp(int index) {
        return numbers[3 * index];
    }

    double rh(int index) {
        return numbers[3 * index + 1];
    }

    double pressure(int index) {
        return numbers[3 * index + 2];
    }

    long read() {
        return read;
    }

    List<String> guesses() {
        return guesses;
    }

    List<LogReport.Row> unreadable() {
        return unreadable;
    }

    long unreadableCount() {
        return unreadableCount;
    }

    long commas() {
        return decimals.commas();
    }

    long points() {
        return decimals.points();
    }
}
