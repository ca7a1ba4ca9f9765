package org.tableweather.release;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.arrow.vector.types.DateUnit;
import org.apache.arrow.vector.types.FloatingPointPrecision;
import org.apache.arrow.vector.types.TimeUnit;
import org.apache.arrow.vector.types.pojo.ArrowType;
import org.apache.arrow.vector.types.pojo.Field;
import org.apache.arrow.vector.types.pojo.FieldType;
import org.apache.arrow.vector.types.pojo.Schema;
import org.apache.parquet.schema.MessageType;
import org.apache.parquet.schema.Type.Repetition;

/**
 * The schema of a file as Apache Arrow has it: Parquet knows no metadata of single columns, Arrow does, and its readers look for
 * them under one key of the file's metadata. So unit and meaning of a column come with the column itself.
 *
 * @source ApacheArrow
 */
final class ArrowFields {
    /** The key under which Arrow's readers look. */
    static final String KEY = "ARROW:schema";

    private static final int BITS = 32;

    private ArrowFields() {}

    /**
     * The schema of one file, each field with {@code unit} (UCUM, where it has one) and {@code description}.
     *
     * @param table names, units and meanings
     * @param schema which columns may be null in this file
     * @return Arrow's message of a schema, Base64
     */
    static String of(ParquetTable<?> table, MessageType schema) {
        List<Field> fields = new ArrayList<>();
        for (TableColumn<?> column : table.columns()) {
            boolean nullable = schema.getType(column.name()).isRepetition(Repetition.OPTIONAL);
            FieldType type = new FieldType(nullable, type(column.type()), null, metadata(column));
            fields.add(new Field(column.name(), type, List.of()));
        }
        return Base64.getEncoder().encodeToString(new Schema(fields).serializeAsMessage());
    }

    private static Map<String, String> metadata(TableColumn<?> column) {
        Map<String, String> metadata = new TreeMap<>();
        metadata.put("description", column.description());
        if (!column.unit().isEmpty()) {
            metadata.put("unit", column.unit());
        }
        return metadata;
    }

    private static ArrowType type(ColumnType type) {
        return switch (type) {
            case TEXT -> ArrowType.Utf8.INSTANCE;
            case NUMBER -> new ArrowType.FloatingPoint(FloatingPointPrecision.DOUBLE);
            case COUNT -> new ArrowType.Int(BITS, true);
            case TIME -> new ArrowType.Timestamp(TimeUnit.MICROSECOND, "UTC");
            case DATE -> new ArrowType.Date(DateUnit.DAY);
            case TRUTH -> ArrowType.Bool.INSTANCE;
        };
    }
}
