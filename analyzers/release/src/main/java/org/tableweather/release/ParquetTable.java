package org.tableweather.release;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.Type;

/**
 * A table: its columns in order.
 *
 * @param <R> the row
 * @param name of the table
 * @param columns in order
 */
record ParquetTable<R>(String name, List<TableColumn<R>> columns) {
    ParquetTable {
        columns = List.copyOf(columns);
    }

    /**
     * The schema of one file.
     *
     * @param complete columns that every row of this file fills, beside those that always are
     */
    MessageType schema(Set<String> complete) {
        List<Type> fields = new ArrayList<>();
        for (TableColumn<R> column : columns) {
            fields.add(column.type().parquet(column.name(), column.required() || complete.contains(column.name())));
        }
        return new MessageType(name, fields);
    }

    /**
     * Unit and meaning of every column, for the file's key-value metadata: in words, and as Arrow has it.
     *
     * @param schema of the file
     */
    Map<String, String> metadata(MessageType schema) {
        Map<String, String> metadata = new LinkedHashMap<>();
        for (TableColumn<R> column : columns) {
            if (!column.unit().isEmpty()) {
                metadata.put("unit." + column.name(), column.unit());
            }
            metadata.put("description." + column.name(), column.description());
        }
        metadata.put(ArrowFields.KEY, ArrowFields.of(this, schema));
        return metadata;
    }
}
