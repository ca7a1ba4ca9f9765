package org.tableweather.release;

import static org.apache.parquet.schema.LogicalTypeAnnotation.dateType;
import static org.apache.parquet.schema.LogicalTypeAnnotation.stringType;
import static org.apache.parquet.schema.LogicalTypeAnnotation.timestampType;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.BINARY;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.BOOLEAN;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.DOUBLE;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.INT32;
import static org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName.INT64;

import org.apache.parquet.schema.LogicalTypeAnnotation;
import org.apache.parquet.schema.LogicalTypeAnnotation.TimeUnit;
import org.apache.parquet.schema.PrimitiveType;
import org.apache.parquet.schema.PrimitiveType.PrimitiveTypeName;
import org.apache.parquet.schema.Type.Repetition;
import org.apache.parquet.schema.Types;

/**
 * The few types of cells: each is one that every reader of Parquet knows.
 *
 * @source ApacheParquet
 */
enum ColumnType {
    /** UTF-8. */
    TEXT("text", BINARY, stringType()),
    /** IEEE 754 binary64. */
    NUMBER("64-bit number", DOUBLE, null),
    /** 32 bits, signed. */
    COUNT("32-bit integer", INT32, null),
    /** Microseconds since 1970-01-01T00:00:00Z. */
    TIME("time, UTC, microseconds", INT64, timestampType(true, TimeUnit.MICROS)),
    /** Days since 1970-01-01. */
    DATE("date", INT32, dateType()),
    /** True or false. */
    TRUTH("true or false", BOOLEAN, null);

    private final String words;
    private final PrimitiveTypeName physical;
    private final LogicalTypeAnnotation logical;

    ColumnType(String words, PrimitiveTypeName physical, LogicalTypeAnnotation logical) {
        this.words = words;
        this.physical = physical;
        this.logical = logical;
    }

    /** What it is, for people. */
    String words() {
        return words;
    }

    /** Whether few different values come again and again, so that a dictionary pays. */
    boolean hasDictionary() {
        return this != TIME && this != TRUTH;
    }

    PrimitiveType parquet(String name, boolean required) {
        return Types.primitive(physical, required ? Repetition.REQUIRED : Repetition.OPTIONAL)
                .as(logical)
                .named(name);
    }
}
