package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.apache.parquet.column.ColumnDescriptor;
import org.apache.parquet.column.ColumnReader;
import org.apache.parquet.column.impl.ColumnReadStoreImpl;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.Converter;
import org.apache.parquet.io.api.GroupConverter;
import org.apache.parquet.io.api.PrimitiveConverter;

/**
 * A run of rows of one Parquet file, row by row; holds one row group at a time, and of it only the pages that the run
 * touches. Columns that the file does not have are empty in every row.
 */
final class ParquetRows implements Closeable {
    private static final GroupConverter NO_CONVERTER = new GroupConverter() {
        private final PrimitiveConverter none = new PrimitiveConverter() {};

        @Override
        public Converter getConverter(int field) {
            return none;
        }

        @Override
        public void start() {
            // values are read from the columns, never assembled
        }

        @Override
        public void end() {
            // values are read from the columns, never assembled
        }
    };

    private final RowGroups groups;
    private final ColumnDescriptor[] descriptors;
    private final ColumnReader[] readers;
    private final Binary[] lastBytes;
    private final String[] lastTexts;
    private long left;

    /**
     * Opens a run of rows.
     *
     * @param path of the file
     * @param columns which, by name; later numbered in this order
     * @param first number of the first row, from 0
     * @param rows how many at most
     * @throws IOException when it is no Parquet file, or cannot be read
     */
    ParquetRows(Path path, List<String> columns, long first, long rows) throws IOException {
        groups = new RowGroups(path, columns, first, rows);
        descriptors = new ColumnDescriptor[columns.size()];
        Arrays.setAll(descriptors, groups::descriptor);
        readers = new ColumnReader[descriptors.length];
        lastBytes = new Binary[descriptors.length];
        lastTexts = new String[descriptors.length];
    }

    /** Rows of the whole file. */
    long rowsOfFile() {
        return groups.rowsOfFile();
    }

    /** Whether the file has this column. */
    boolean has(int column) {
        return groups.has(column);
    }

    /**
     * Goes to the next row; false after the last.
     *
     * @throws IOException when the file is damaged or cannot be read; the message names it
     */
    boolean next() throws IOException {
        try {
            return advance();
        } catch (RuntimeException e) {
            throw groups.damaged(e);
        }
    }

    private boolean advance() throws IOException {
        if (left == 0) {
            if (!groups.enterNext()) {
                return false;
            }
            enter();
        } else {
            for (int i = 0; i < readers.length; i++) {
                leave(i);
            }
        }
        left--;
        return true;
    }

    /** A value that nobody asked for must be passed over, or the next one would be it. */
    private void leave(int column) {
        if (readers[column] != null) {
            if (!isEmpty(column)) {
                readers[column].skip();
            }
            readers[column].consume();
        }
    }

    private void enter() {
        left = groups.rows();
        ColumnReadStoreImpl columns =
                new ColumnReadStoreImpl(groups.pages(), NO_CONVERTER, groups.schema(), groups.createdBy());
        for (int i = 0; i < readers.length; i++) {
            readers[i] = groups.isEmpty(i) ? null : columns.getColumnReader(descriptors[i]);
        }
    }

    /** Whether the row has no value in this column. */
    boolean isEmpty(int column) {
        ColumnReader reader = readers[column];
        return reader == null || reader.getCurrentDefinitionLevel() < descriptors[column].getMaxDefinitionLevel();
    }

    /** A text; empty when there is none. */
    String text(int column) {
        if (isEmpty(column)) {
            return "";
        }
        Binary bytes = readers[column].getBinary();
        // a dictionary hands out the same object for the same value
        if (bytes != lastBytes[column]) {
            lastBytes[column] = bytes;
            lastTexts[column] = bytes.toStringUsingUTF8();
        }
        return lastTexts[column];
    }

    /** A number; NaN when there is none. */
    double number(int column) {
        return isEmpty(column) ? Double.NaN : readers[column].getDouble();
    }

    /** A count; −1 when there is none. */
    int count(int column) {
        return isEmpty(column) ? -1 : readers[column].getInteger();
    }

    /** 64 bits that are there. */
    long whole(int column) {
        return readers[column].getLong();
    }

    /** A truth that is there. */
    boolean truth(int column) {
        return readers[column].getBoolean();
    }

    @Override
    public void close() throws IOException {
        groups.close();
    }
}
