package org.tableweather.release;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.dictionary.Field;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.table.ClimateColumn;

/** The columns of a table of readings: those of {@code climate.csv} with temperatures in °C, and what names the room. */
final class ReadingTable {
    private static final Map<String, Field> FIELDS = TrialTable.fields("climate.csv");

    static final ParquetTable<ReadingRow> TABLE = new ParquetTable<>("readings", columns());

    private ReadingTable() {}

    private static List<TableColumn<ReadingRow>> columns() {
        return List.of(
                TableColumn.<ReadingRow>text(
                                TrialTable.ROOM_KEY,
                                "the room over all contributions: a released session of it uses the instrument",
                                ReadingRow::roomKey)
                        .always(),
                TableColumn.<ReadingRow>text(
                                SessionColumns.CONTRIBUTION,
                                "id of the contribution that has the reading",
                                ReadingRow::contribution)
                        .always(),
                text(ClimateColumn.INSTRUMENT, ClimateReading::instrument).always(),
                TableColumn.<ReadingRow>time(
                                "read_at",
                                FIELDS.get(ClimateColumn.TIME.header()).description(),
                                row -> Optional.of(row.reading().time()))
                        .always(),
                TableColumn.count(
                        "read_at_ns",
                        "ns",
                        "what read_at has beyond whole microseconds; empty when nothing",
                        row -> TableColumn.nanosBeyondMicros(row.reading().time())),
                text(ClimateColumn.PLACEMENT, ClimateReading::placement),
                number(ClimateColumn.TEMP_C, ClimateReading::tempC),
                number(ClimateColumn.RH_PCT, ClimateReading::rhPct),
                number(ClimateColumn.PRESSURE_HPA, ClimateReading::pressureHpa),
                number(ClimateColumn.BED_C, ClimateReading::bedC));
    }

    private static TableColumn<ReadingRow> text(ClimateColumn column, Function<ClimateReading, String> value) {
        return TableColumn.text(
                column.header(), FIELDS.get(column.header()).description(), row -> value.apply(row.reading()));
    }

    private static TableColumn<ReadingRow> number(ClimateColumn column, ToDoubleFunction<ClimateReading> value) {
        return TableColumn.number(
                column.header(),
                column.unit(),
                FIELDS.get(column.header()).description(),
                row -> value.applyAsDouble(row.reading()));
    }
}
