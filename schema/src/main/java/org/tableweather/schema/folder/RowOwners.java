package org.tableweather.schema.folder;

import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.tableweather.schema.csv.CsvText;
import org.tableweather.schema.csv.RowHandler;

/** Which session, or instrument, some rows of a file belong to: findings name rows alone. */
public final class RowOwners extends RowHandler {
    private final String column;
    private final Set<Long> rows;
    private final Map<Long, String> owners = new HashMap<>();
    private int position = -1;

    private RowOwners(String column, Set<Long> rows) {
        this.column = column;
        this.rows = rows;
    }

    /**
     * Reads one column of one file.
     *
     * @param source folder or archive
     * @param file {@code trials.csv} ...
     * @param column whose cell tells the owner: {@code session}
     * @param rows wanted, as a spreadsheet counts: the header is row 1
     * @return the cell of each wanted row that has one
     * @throws IOException when it cannot be read
     */
    public static Map<Long, String> of(ContributionSource source, String file, String column, Set<Long> rows)
            throws IOException {
        RowOwners reader = new RowOwners(column, rows);
        Optional<InputStream> opened = rows.isEmpty() ? Optional.empty() : source.open(file);
        if (opened.isPresent()) {
            try (InputStream in = opened.get()) {
                CsvText.open(in, Set.of(column), bytes -> {}).read(reader);
            } catch (CsvText.Broken e) {
                // a file that was refused for it: what was read before holds
                return reader.owners;
            }
        }
        return reader.owners;
    }

    @Override
    protected void header(List<String> names, long row) {
        position = names.stream()
                .map(name -> name.toLowerCase(Locale.ROOT))
                .toList()
                .indexOf(column);
    }

    @Override
    protected void begin() {
        // a row keeps nothing of the one before
    }

    @Override
    protected void cell(int cell, char[] buffer, int from, int to) {
        if (cell == position && rows.contains(row())) {
            owners.put(row(), new String(buffer, from, to - from));
        }
    }

    @Override
    protected void end(int cells, int extra) {
        // kept already
    }
}
