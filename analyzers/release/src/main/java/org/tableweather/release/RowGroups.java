package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.parquet.ParquetReadOptions;
import org.apache.parquet.column.ColumnDescriptor;
import org.apache.parquet.column.page.PageReadStore;
import org.apache.parquet.column.statistics.Statistics;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.filter2.columnindex.RowRanges;
import org.apache.parquet.hadoop.ParquetFileReader;
import org.apache.parquet.hadoop.metadata.BlockMetaData;
import org.apache.parquet.hadoop.metadata.ColumnChunkMetaData;
import org.apache.parquet.hadoop.metadata.ColumnPath;
import org.apache.parquet.io.LocalInputFile;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.Type;

/**
 * A run of rows of one Parquet file, row group by row group; holds one at a time, packed, and of it only the columns that are
 * wanted and the pages that the run touches.
 */
final class RowGroups implements Closeable {
    private final Path path;
    private final ParquetFileReader file;
    private final MessageType schema;
    private final ColumnDescriptor[] descriptors;
    private final long end;
    private long next;
    private int group = -1;
    private long groupEnd;
    private long first;
    private long rows;
    private PageReadStore pages;

    /**
     * Opens a run of rows.
     *
     * @param path of the file
     * @param columns which, by name; later numbered in this order
     * @param first number of the first row, from 0
     * @param rows how many at most
     * @throws IOException when it is no Parquet file, or cannot be read
     */
    RowGroups(Path path, List<String> columns, long first, long rows) throws IOException {
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
        next = first;
        end = Math.min(first + rows, file.getRecordCount());
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

    /** Parquet's complaints about what it reads do not name the file. */
    IOException damaged(Exception cause) {
        return new IOException(path + " is damaged: " + cause.getMessage(), cause);
    }

    /** Rows of the whole file. */
    long rowsOfFile() {
        return file.getRecordCount();
    }

    /** Whether the file has this column. */
    boolean has(int column) {
        return descriptors[column] != null;
    }

    /** How many columns were named. */
    int columns() {
        return descriptors.length;
    }

    /** What a column is that the file has. */
    ColumnDescriptor descriptor(int column) {
        return descriptors[column];
    }

    /** The columns that the file has. */
    MessageType schema() {
        return schema;
    }

    /** Which program wrote the file. */
    String createdBy() {
        return file.getFileMetaData().getCreatedBy();
    }

    /** Goes to the next row group that has rows of the run; false after the last. */
    boolean enterNext() throws IOException {
        if (next >= end) {
            return false;
        }
        List<BlockMetaData> groups = file.getRowGroups();
        long start;
        do {
            group++;
            start = groupEnd;
            groupEnd += groups.get(group).getRowCount();
        } while (next >= groupEnd);
        first = next - start;
        rows = Math.min(end, groupEnd) - next;
        pages = rows == groupEnd - start
                ? file.readRowGroup(group)
                : file.readFilteredRowGroup(
                        group,
                        RowRanges.builder()
                                .addSelectedRange(first, first + rows - 1)
                                .build());
        next += rows;
        return true;
    }

    /** Number of the first row of the run in the row group. */
    long first() {
        return first;
    }

    /** Rows of the run in the row group. */
    long rows() {
        return rows;
    }

    /** The pages of the row group, of all columns that the file has. */
    PageReadStore pages() {
        return pages;
    }

    /** Whether no row of the row group has a value in this column: it is not looked at row by row then. */
    boolean isEmpty(int column) {
        if (descriptors[column] == null) {
            return true;
        }
        BlockMetaData entered = file.getRowGroups().get(group);
        ColumnPath wanted = ColumnPath.get(descriptors[column].getPath());
        for (ColumnChunkMetaData chunk : entered.getColumns()) {
            if (chunk.getPath().equals(wanted)) {
                Statistics<?> statistics = chunk.getStatistics();
                return statistics != null
                        && statistics.isNumNullsSet()
                        && statistics.getNumNulls() == entered.getRowCount();
            }
        }
        return false;
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
