package org.tableweather.schema.folder;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.RecordType;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.BitSet;
import java.util.List;
import org.tableweather.schema.table.Column;

/**
 * One CSV file being written. Rows go to a temporary file with all columns; when it is complete, the columns that no row
 * filled are left out of a second one, which then takes the file's name.
 */
final class ColumnFile<C extends Column> {
    static final String PART = ".part";

    private final Path path;
    private final Path rows;
    private final Path narrow;
    private final List<C> columns;
    private Writer out;
    private CellWriter cells;

    ColumnFile(Path path, List<C> columns) {
        this.path = path;
        this.rows = path.resolveSibling(path.getFileName() + ".rows" + PART);
        this.narrow = path.resolveSibling(path.getFileName() + PART);
        this.columns = columns;
    }

    CellWriter row() throws IOException {
        if (out == null) {
            out = Files.newBufferedWriter(rows);
            cells = new CellWriter(out);
        }
        return cells;
    }

    /** Writes the file with the filled columns under its temporary name. */
    void prepare() throws IOException {
        if (out == null) {
            return;
        }
        out.close();
        BitSet kept = cells.filled();
        for (C column : columns) {
            if (column.required()) {
                kept.set(columns.indexOf(column));
            }
        }
        try (BufferedWriter target = Files.newBufferedWriter(narrow)) {
            CellWriter header = new CellWriter(target);
            kept.stream().forEach(i -> header.text(columns.get(i).header()));
            header.end();
            try (CsvReader<Boolean> source = CsvReader.builder().build(new Narrowing(kept, target), rows)) {
                for (Boolean row : source) {
                    assert row;
                }
            }
        }
    }

    /** Copies the kept cells of each row. */
    private static final class Narrowing extends AbstractBaseCsvCallbackHandler<Boolean> {
        private final BitSet kept;
        private final CellWriter cells;

        Narrowing(BitSet kept, Writer target) {
            this.kept = kept;
            this.cells = new CellWriter(target);
        }

        @Override
        protected void handleField(int column, char[] buffer, int offset, int length, boolean quoted) {
            if (kept.get(column)) {
                cells.copy(buffer, offset, length, quoted);
            }
        }

        @Override
        protected Boolean buildRecord() {
            try {
                cells.end();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return Boolean.TRUE;
        }

        @Override
        protected RecordType getRecordType() {
            return RecordType.DATA;
        }
    }

    /** Gives the prepared file its name. */
    void publish() throws IOException {
        if (Files.exists(narrow)) {
            Files.move(narrow, path, StandardCopyOption.ATOMIC_MOVE);
        }
    }

    /** Removes what is left under temporary names. */
    void discard() throws IOException {
        if (out != null) {
            out.close();
        }
        Files.deleteIfExists(rows);
        Files.deleteIfExists(narrow);
    }
}
