package org.tableweather.release;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.tableweather.analyzers.spi.TrialNumber;
import org.tableweather.schema.dictionary.DataDictionary;
import org.tableweather.schema.dictionary.Field;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.table.TrialColumn;

/** The columns of a table of trials: those of {@code trials.csv} by their names there, and what names the session. */
final class TrialTable {
    static final String ROOM_KEY = "room_key";
    static final String SESSION_KEY = "session_key";
    static final String SESSION_DIGEST = "session_digest";
    static final String SESSION_RECORD = "session_record";
    static final String SESSION_TRIALS = "session_trials";
    static final String ORDINAL = "ordinal";
    static final String STARTED_AT_NS = "started_at_ns";
    static final String CLIMATE_SOURCE = "climate_source";

    private static final Map<String, Field> FIELDS = fields("trials.csv");

    private static final Map<String, String> CLIMATES = Map.of(
            TrialNumber.CLIMATE_TEMP_C.column(),
            "temperature of the air that stands for this trial",
            TrialNumber.CLIMATE_RH_PCT.column(),
            "relative humidity of the air that stands for this trial");

    /** Part of a release: the sessions are a table of their own. */
    static final ParquetTable<TrialRow> RELEASED = new ParquetTable<>("trials", columns());

    /** A file that stands alone. */
    static final ParquetTable<TrialRow> ALONE = new ParquetTable<>("trials", alone());

    private TrialTable() {}

    /** What the format says of the columns of a file, by name. */
    static Map<String, Field> fields(String file) {
        return DataDictionary.sections().stream()
                .filter(section -> section.name().equals(file))
                .flatMap(section -> section.fields().stream())
                .collect(Collectors.toMap(Field::name, field -> field));
    }

    private static List<TableColumn<TrialRow>> alone() {
        List<TableColumn<TrialRow>> columns = new ArrayList<>(columns());
        columns.add(TableColumn.count(
                        SESSION_TRIALS,
                        "1",
                        "trials of the whole session, in this file or not",
                        TrialRow::sessionTrials)
                .always());
        columns.add(TableColumn.text(
                        SESSION_RECORD,
                        "the session with its room, table and equipment, as JSON",
                        TrialRow::sessionJson)
                .always());
        return columns;
    }

    private static List<TableColumn<TrialRow>> columns() {
        List<TableColumn<TrialRow>> columns = new ArrayList<>();
        columns.add(text(TrialColumn.KIND, row -> row.kind().schemaName()).always());
        columns.add(text(TrialColumn.SHOT, Trial::shot).always());
        columns.add(TableColumn.<TrialRow>text(
                        ROOM_KEY,
                        "the room over all contributions: contributor key, slash, room id",
                        row -> row.session().roomKey())
                .always());
        columns.add(TableColumn.<TrialRow>text(
                        SESSION_KEY,
                        "the session over all contributions: room key, slash, session id",
                        row -> row.session().sessionKey())
                .always());
        columns.add(TableColumn.<TrialRow>text(
                        SESSION_DIGEST,
                        "SHA-256 of the session and its trials, hex: names its content",
                        row -> row.session().digest())
                .always());
        columns.add(text(TrialColumn.SESSION, Trial::session).always());
        columns.add(TableColumn.count(
                        ORDINAL, "1", "position in the session, from 1: the order of trial ids", TrialRow::ordinal)
                .always());
        columns.add(text(TrialColumn.TRIAL, Trial::trial).always());
        columns.add(TableColumn.time(
                "started_at",
                FIELDS.get("started_at").description(),
                row -> row.trial().startedAt()));
        columns.add(TableColumn.count(
                STARTED_AT_NS,
                "ns",
                "what started_at has beyond whole microseconds; empty when nothing",
                TrialTable::nanosBeyondMicros));
        columns.add(text(TrialColumn.BALL, Trial::ball));
        columns.add(TableColumn.truth(
                "made",
                FIELDS.get("made").description(),
                row -> made(row.trial().made())));
        columns.add(count(TrialColumn.RAILS, Trial::rails));
        columns.add(count(TrialColumn.BALLS_MADE, Trial::ballsMade));
        addNumbers(columns);
        columns.add(TableColumn.<TrialRow>text(
                        CLIMATE_SOURCE,
                        "where that climate comes from: spot, log, stated or none",
                        row -> row.trial().climate().source().schemaName())
                .always());
        columns.add(text(TrialColumn.NOTE, Trial::note));
        return columns;
    }

    private static void addNumbers(List<TableColumn<TrialRow>> to) {
        for (TrialNumber number : TrialNumber.values()) {
            String description = CLIMATES.containsKey(number.column())
                    ? CLIMATES.get(number.column())
                    : FIELDS.get(number.column()).description();
            to.add(TableColumn.number(number.column(), number.unit(), description, row -> number.of(row.trial())));
        }
    }

    private static TableColumn<TrialRow> text(TrialColumn column, Function<Trial, String> value) {
        return TableColumn.text(
                column.header(), FIELDS.get(column.header()).description(), row -> value.apply(row.trial()));
    }

    private static TableColumn<TrialRow> count(TrialColumn column, ToIntFunction<Trial> value) {
        return TableColumn.count(
                column.header(),
                column.unit(),
                FIELDS.get(column.header()).description(),
                row -> value.applyAsInt(row.trial()));
    }

    private static Optional<Boolean> made(Made made) {
        return made == Made.NOT_STATED ? Optional.empty() : Optional.of(made == Made.YES);
    }

    private static int nanosBeyondMicros(TrialRow row) {
        return row.trial().startedAt().map(TableColumn::nanosBeyondMicros).orElse(-1);
    }
}
