package org.tableweather.release;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.hadoop.conf.Configuration;
import org.apache.parquet.column.ParquetProperties.WriterVersion;
import org.apache.parquet.conf.ParquetConfiguration;
import org.apache.parquet.conf.PlainParquetConfiguration;
import org.apache.parquet.hadoop.ParquetWriter;
import org.apache.parquet.hadoop.api.WriteSupport;
import org.apache.parquet.hadoop.metadata.CompressionCodecName;
import org.apache.parquet.io.OutputFile;
import org.apache.parquet.io.api.RecordConsumer;
import org.apache.parquet.schema.MessageType;

/**
 * Writes rows of a table into one Parquet file: texts and numbers by dictionary where that pays, times by their differences, zstd, page index,
 * checksums of pages. Equal rows give equal bytes.
 *
 * @param <R> the row
 */
final class TableWriter<R> implements Closeable {
    /**
     * How rows are laid out.
     *
     * @param rowsPerGroup rows of a row group: what a reader holds at once, packed
     * @param rowsPerPage rows of a page, where it is not full before: what a reader holds unpacked of each column
     * @param version of pages and encodings
     */
    record Layout(int rowsPerGroup, int rowsPerPage, WriterVersion version) {
        static final Layout STANDARD = new Layout(1 << 17, 1 << 16, WriterVersion.PARQUET_2_0);
    }

    private static final long NO_BYTE_LIMIT = 1L << 40;
    private static final int DICTIONARY_BYTES = 4 << 20;

    private final ParquetWriter<R> writer;
    private long rows;

    private TableWriter(ParquetWriter<R> writer) {
        this.writer = writer;
    }

    /**
     * Opens a file.
     *
     * @param table its columns
     * @param complete columns that every row will fill
     * @param filters columns of many different values that are looked up one by one, each with how many there are
     * @param codec how hard it is packed
     * @param to where
     */
    static <R> TableWriter<R> open(
            ParquetTable<R> table, Set<String> complete, Map<String, Integer> filters, ZstdCodec codec, OutputFile to)
            throws IOException {
        return open(table, complete, filters, codec, Layout.STANDARD, to);
    }

    /** The same in another layout. */
    static <R> TableWriter<R> open(
            ParquetTable<R> table,
            Set<String> complete,
            Map<String, Integer> filters,
            ZstdCodec codec,
            Layout layout,
            OutputFile to)
            throws IOException {
        Settings<R> settings = new Settings<>(to, new Rows<>(table, table.schema(complete)));
        settings.withConf(new PlainParquetConfiguration())
                .withCodecFactory(codec)
                .withCompressionCodec(CompressionCodecName.ZSTD)
                .withWriterVersion(layout.version())
                .withRowGroupSize(NO_BYTE_LIMIT)
                .withRowGroupRowCountLimit(layout.rowsPerGroup())
                .withPageRowCountLimit(layout.rowsPerPage())
                .withDictionaryPageSize(DICTIONARY_BYTES)
                .withDictionaryEncoding(false)
                .withPageWriteChecksumEnabled(true)
                .withSizeStatisticsEnabled(false);
        for (TableColumn<R> column : table.columns()) {
            settings.withDictionaryEncoding(column.name(), column.dictionary() && !filters.containsKey(column.name()));
        }
        filters.forEach((column, values) -> settings.withBloomFilterEnabled(column, true)
                .withBloomFilterNDV(column, Math.min(values, layout.rowsPerGroup())));
        return new TableWriter<>(settings.build());
    }

    void write(R row) throws IOException {
        writer.write(row);
        rows++;
    }

    /** Rows written so far. */
    long rows() {
        return rows;
    }

    @Override
    public void close() throws IOException {
        writer.close();
    }

    private static final class Settings<R> extends ParquetWriter.Builder<R, Settings<R>> {
        private final Rows<R> rows;

        Settings(OutputFile to, Rows<R> rows) {
            super(to);
            this.rows = rows;
        }

        @Override
        protected Settings<R> self() {
            return this;
        }

        @Override
        @SuppressWarnings("deprecation") // abstract, although another is called
        protected WriteSupport<R> getWriteSupport(Configuration conf) {
            return rows;
        }

        @Override
        protected WriteSupport<R> getWriteSupport(ParquetConfiguration conf) {
            return rows;
        }
    }

    private static final class Rows<R> extends WriteSupport<R> {
        private final List<TableColumn<R>> columns;
        private final Map<String, String> metadata;
        private final MessageType schema;
        private RecordConsumer to;

        Rows(ParquetTable<R> table, MessageType schema) {
            this.columns = table.columns();
            this.metadata = table.metadata(schema);
            this.schema = schema;
        }

        @Override
        @SuppressWarnings("deprecation") // abstract, although another is called
        public WriteContext init(Configuration conf) {
            return new WriteContext(schema, metadata);
        }

        @Override
        public WriteContext init(ParquetConfiguration conf) {
            return new WriteContext(schema, metadata);
        }

        @Override
        public void prepareForWrite(RecordConsumer consumer) {
            to = consumer;
        }

        @Override
        public void write(R row) {
            to.startMessage();
            for (int i = 0; i < columns.size(); i++) {
                TableColumn<R> column = columns.get(i);
                if (column.cell().isPresent(row)) {
                    to.startField(column.name(), i);
                    column.cell().put(row, to);
                    to.endField(column.name(), i);
                }
            }
            to.endMessage();
        }
    }
}
