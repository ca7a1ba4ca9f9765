package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.parquet.ParquetReadOptions;
import org.apache.parquet.column.ColumnDescriptor;
import org.apache.parquet.column.ColumnReader;
import org.apache.parquet.column.impl.ColumnReadStoreImpl;
import org.apache.parquet.column.page.PageReadStore;
import org.apache.parquet.column.statistics.Statistics;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.filter2.columnindex.RowRanges;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.metadata.BlockMetaData;
import org.apache.parquet.hadoop.metadata.ColumnChunkMetaData;
import org.apache.parquet.hadoop.metadata.ColumnPath;
import org.apache.parquet.io.LocalInputFile;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.Converter;
import org.apache.parquet.io.api.GroupConverter;
import org.apache.parquet.io.api.PrimitiveConverter;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.Type;

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

    private final Path path;
    private final ParquetFileReader file;
    private final MessageType schema;
    private final ColumnDescriptor[] descriptors;
    private final ColumnReader[] readers;
    private final Binary[] lastBytes;
    private final String[] lastTexts;
    private final long end;
    private long next;
    private long groupEnd;
    private int group = -1;

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
        this.path = path;
        file = open(path);
        MessageType all = file.getFileMetaData().getSchema();
        schema = new MessageType(
                all.getName(),
                columns.stream()
                        .filter(all::containsField)
                        .<Type>map(all::getType)
                        .toList());
        file.setRequestedSchema(schema);
        descriptors = columns.stream()
                .map(name -> schema.containsField(name) ? schema.getColumnDescription(new String[] {name}) : null)
                .toArray(ColumnDescriptor[]::new);
        readers = new ColumnReader[descriptors.length];
        lastBytes = new Binary[descriptors.length];
        lastTexts = new String[descriptors.length];
        next = first;
        end = Math.min(first + rows, file.getRecordCount());
        groupEnd = 0;
    }

    static ParquetFileReader open(Path path) throws IOException {
        try {
            return ParquetFileReader.open(
                    new LocalInputFile(path),
                    ParquetReadOptions.builder(new PlainParquetConfiguration())
                            .withCodecFactory(ZstdCodec.standard())
                            .usePageChecksumVerification()
                            .build());
        } catch (RuntimeException e) {
            throw new IOException(path + " is no Parquet file, or a damaged one: " + e.getMessage(), e);
        }
    }

    /** Rows of the whole file. */
    long rowsOfFile() {
        return file.getRecordCount();
    }

    /** Whether the file has this column. */
    boolean has(int column) {
        return descriptors[column] != null;
    }

    /**
     * Goes to the next row; false after the last.
     *
     * @throws IOException when the file is damaged or cannot be read; the message names it
     */
    boolean next() throws IOException {
        if (next >= end) {
            return false;
        }
        try {
            advance();
        } catch (RuntimeException e) {
            throw damaged(path, e);
        }
        return true;
    }

    /** Parquet's complaints about what it reads do not name the file. */
    static IOException damaged(Path path, RuntimeException cause) {
        return new IOException(path + " is damaged: " + cause.getMessage(), cause);
    }

    private void advance() throws IOException {
        if (next >= groupEnd) {
            enterGroup();
        } else {
            for (int i = 0; i < readers.length; i++) {
                leave(i);
            }
        }
        next++;
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

    private void enterGroup() throws IOException {
        List<BlockMetaData> groups = file.getRowGroups();
        long start;
        do {
            group++;
            start = groupEnd;
            groupEnd += groups.get(group).getRowCount();
        } while (next >= groupEnd);
        long last = Math.min(end, groupEnd) - 1;
        boolean whole = next == start && last == groupEnd - 1;
        PageReadStore pages = whole
                ? file.readRowGroup(group)
                : file.readFilteredRowGroup(
                        group,
                        RowRanges.builder()
                                .addSelectedRange(next - start, last - start)
                                .build());
        ColumnReadStoreImpl columns = new ColumnReadStoreImpl(
                pages, NO_CONVERTER, schema, file.getFileMetaData().getCreatedBy());
        for (int i = 0; i < readers.length; i++) {
            readers[i] = descriptors[i] == null || isAllEmpty(groups.get(group), descriptors[i])
                    ? null
                    : columns.getColumnReader(descriptors[i]);
        }
    }

    /** A column that no row of the group fills is not looked at row by row. */
    private static boolean isAllEmpty(BlockMetaData group, ColumnDescriptor column) {
        for (ColumnChunkMetaData chunk : group.getColumns()) {
            if (chunk.getPath().equals(ColumnPath.get(column.getPath()))) {
                Statistics<?> statistics = chunk.getStatistics();
                return statistics != null
                        && statistics.isNumNullsSet()
                        && statistics.getNumNulls() == group.getRowCount();
            }
        }
        return false;
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
        file.close();
    }
}
