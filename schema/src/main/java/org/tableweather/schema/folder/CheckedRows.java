package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.function.Supplier;
import org.tableweather.schema.check.Check;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.check.UnitChecks;
import org.tableweather.schema.csv.Decimals;
import org.tableweather.schema.csv.Interner;
import org.tableweather.schema.csv.RowHandler;
import org.tableweather.schema.csv.Timestamps;
import org.tableweather.schema.table.Column;

/** Reads the rows of one file of the folder: cells of every type, with what is wrong reported by row and column. */
abstract class CheckedRows extends RowHandler {
    private static final char DAMAGED = '\uFFFD';

    final String file;
    final Findings findings;
    final Decimals decimals = new Decimals();
    final Timestamps times = new Timestamps();
    final Interner texts = new Interner();

    private boolean refused;
    private boolean lastShort;
    private long lastRow;
    private long filledRows;
    private long shortRow;
    private int shortCells;

    CheckedRows(String file, Findings findings) {
        this.file = file;
        this.findings = findings;
    }

    /** Begins a row of which nothing is refused yet. */
    final void clean() {
        refused = false;
    }

    /** Whether something in the current row was refused. */
    final boolean isRefused() {
        return refused;
    }

    /** Whether the last row had fewer cells than the header. */
    final boolean endedShort() {
        return lastShort;
    }

    /** The last row that was not blank. */
    final long lastRow() {
        return lastRow;
    }

    /** Rows below the header that are not blank. */
    final long filledRows() {
        return filledRows;
    }

    /** Refuses a cell of the current row. */
    final void refuse(Check check, Column column, String value, String bound, Supplier<String> message) {
        refused = true;
        findings.add(check, Place.cell(file, row(), column.header()), value, bound, message);
    }

    /** Tells of a last row that is short, unless the file was cut off there, which is told of the file. */
    final void close(boolean cutOff) {
        if (shortRow > 0 && !cutOff) {
            tellShort();
        }
    }

    private void tellShort() {
        int cells = shortCells;
        findings.add(
                StructureChecks.ROW_SHORT,
                Place.row(file, shortRow),
                null,
                width() + " cells",
                () -> "the row has " + cells + " cells, the header " + width());
        shortRow = 0;
    }

    /** Judges the width of the current row. */
    final void checkWidth(int cells, int extra) {
        if (shortRow > 0) {
            tellShort();
        }
        lastShort = cells < width();
        lastRow = row();
        filledRows++;
        boolean shifted = cells > width() && refused;
        if (extra == 0 && !lastShort && !shifted) {
            return;
        }
        Place place = Place.row(file, row());
        char other = otherSeparator();
        if (other != 0) {
            refused = true;
            findings.add(
                    StructureChecks.MIXED_SEPARATORS,
                    place,
                    firstCell(),
                    () -> "the row is separated by '" + other + "', the header is not");
        } else if (!lastShort) {
            refused = true;
            findings.add(
                    StructureChecks.ROW_LONG,
                    place,
                    null,
                    width() + " cells",
                    () -> "the row has " + cells + " cells, the header " + width());
        } else {
            shortRow = row();
            shortCells = cells;
        }
    }

    private char otherSeparator() {
        String first = firstCell();
        for (char candidate : new char[] {';', '\t', ','}) {
            if (first.indexOf(candidate) >= 0) {
                return candidate;
            }
        }
        return 0;
    }

    /** The number of a cell; NaN when it is none, which is then reported, or when the cell says so. */
    final double number(Column column, char[] buffer, int from, int to) {
        return number(column, buffer, from, to, decimals.parse(buffer, from, to));
    }

    /** The same, of a cell that was read already. */
    final double number(Column column, char[] buffer, int from, int to, double value) {
        if (value >= column.min() && value <= column.max()) {
            return value;
        }
        if (Double.isNaN(value)) {
            if (!isMissingMark(buffer, from, to)) {
                String text = new String(buffer, from, to - from);
                Check check = text.indexOf(DAMAGED) >= 0 ? StructureChecks.ENCODING : StructureChecks.NUMBER;
                refuse(check, column, text, check.bound(), () -> "'" + text + "' is not a number");
            }
            return value;
        }
        String text = new String(buffer, from, to - from);
        String bound = UnitChecks.bound(column);
        refuse(UnitChecks.range(column), column, text, bound, () -> text + " is not within " + bound);
        return Double.NaN;
    }

    /** {@code NA} and {@code NaN}, which statistics packages write for what was not measured. */
    private static boolean isMissingMark(char[] buffer, int from, int to) {
        int length = to - from;
        boolean na = length >= 2 && (buffer[from] | 0x20) == 'n' && (buffer[from + 1] | 0x20) == 'a';
        return na && (length == 2 || length == 3 && (buffer[from + 2] | 0x20) == 'n');
    }

    /** Whether the time of a cell could be read; {@link #times} has it. */
    final boolean time(Column column, char[] buffer, int from, int to) {
        Timestamps.Outcome outcome = times.parse(buffer, from, to);
        if (outcome == Timestamps.Outcome.READ) {
            return true;
        }
        String text = new String(buffer, from, to - from);
        boolean local = outcome == Timestamps.Outcome.NO_ZONE;
        Check check = local ? StructureChecks.TIME_ZONE : StructureChecks.TIME;
        refuse(
                check,
                column,
                text,
                check.bound(),
                () -> local ? "the time has no zone" : "not a time as RFC 3339 says");
        return false;
    }

    /** The text of a cell. */
    final String text(Column column, char[] buffer, int from, int to) {
        String text = texts.text(buffer, from, to);
        return checked(column, text);
    }

    /** The text of a cell that differs from row to row. */
    final String freshText(Column column, char[] buffer, int from, int to) {
        return checked(column, new String(buffer, from, to - from));
    }

    private String checked(Column column, String text) {
        if (text.indexOf(DAMAGED) >= 0) {
            refuse(
                    StructureChecks.ENCODING,
                    column,
                    text,
                    StructureChecks.ENCODING.bound(),
                    () -> "bytes that are no UTF-8 characters");
        }
        return text;
    }

    /** Looks for damaged characters in a cell that is not read. */
    final void ignore(int column, char[] buffer, int from, int to) {
        for (int i = from; i < to; i++) {
            if (buffer[i] == DAMAGED) {
                refused = true;
                findings.add(
                        StructureChecks.ENCODING,
                        Place.row(file, row()),
                        new String(buffer, from, to - from),
                        () -> "bytes that are no UTF-8 characters, in column " + (column + 1));
                return;
            }
        }
    }

    /** Reports an empty required cell. */
    final void require(Column column, boolean filled) {
        if (!filled) {
            refuse(
                    StructureChecks.REQUIRED_CELL,
                    column,
                    "",
                    StructureChecks.REQUIRED_CELL.bound(),
                    () -> "the cell is empty");
        }
    }

    @Override
    protected abstract void end(int cells, int extra) throws IOException;
}
