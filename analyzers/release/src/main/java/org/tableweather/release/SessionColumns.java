package org.tableweather.release;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.tableweather.schema.record.Cloth;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;

/** The columns of the table of sessions: what one looks for, and the whole record as JSON. */
final class SessionColumns {
    static final String RECORD = "record";
    static final String DIGEST_HOLDS = "digest_holds";
    static final String TRIALS = "trials";
    static final String CONTRIBUTION = "contribution";
    static final String INSTRUMENT = "instrument";

    static final ParquetTable<SessionRow> TABLE = new ParquetTable<>("sessions", columns());

    private SessionColumns() {}

    private static List<TableColumn<SessionRow>> columns() {
        List<TableColumn<SessionRow>> columns = new ArrayList<>();
        addKeys(columns);
        addRoom(columns);
        addTable(columns);
        addSession(columns);
        addTrials(columns);
        columns.add(text(
                        RECORD,
                        "all of the session, its room, table and equipment, as JSON",
                        row -> SessionJson.write(row.session()))
                .always());
        return columns;
    }

    private static void addKeys(List<TableColumn<SessionRow>> to) {
        to.add(text(CONTRIBUTION, "id of the contribution it came with", SessionRow::contribution)
                .always());
        to.add(text(
                        TrialTable.ROOM_KEY,
                        "the room over all contributions",
                        row -> row.session().roomKey())
                .always());
        to.add(text(
                        TrialTable.SESSION_KEY,
                        "the session over all contributions",
                        row -> row.session().sessionKey())
                .always());
        to.add(text(
                        TrialTable.SESSION_DIGEST,
                        "SHA-256 of the session and its trials, hex: names its content",
                        row -> row.session().digest())
                .always());
        to.add(TableColumn.<SessionRow>truth(
                        DIGEST_HOLDS,
                        "whether the digest can be computed again from this row and its trials: not where the room's position"
                                + " was stated more closely than it is published",
                        row -> Optional.of(row.digestHolds()))
                .always());
        to.add(TableColumn.<SessionRow>truth(
                        "invented",
                        "whether the data are made up for demonstration",
                        row -> Optional.of(row.session().invented()))
                .always());
    }

    private static void addRoom(List<TableColumn<SessionRow>> to) {
        to.add(text(
                        "room",
                        "id of the room in its contribution",
                        row -> room(row).id())
                .always());
        to.add(optional("room_name", "name of the room", row -> room(row).name()));
        to.add(optional("country", "ISO 3166-1 alpha-2", row -> room(row).country()));
        to.add(number("latitude_deg", "deg", "north, to 0.1", row -> room(row).latitude()));
        to.add(number("longitude_deg", "deg", "east, to 0.1", row -> room(row).longitude()));
        to.add(number("altitude_m", "m", "above sea level", row -> room(row).altitudeM()));
    }

    private static void addTable(List<TableColumn<SessionRow>> to) {
        to.add(text(
                        "table_id",
                        "id of the table in its contribution",
                        row -> table(row).id())
                .always());
        to.add(number(
                "playing_length_mm",
                "mm",
                "nose to nose along",
                row -> table(row).playingLengthMm()));
        to.add(number(
                "playing_width_mm",
                "mm",
                "nose to nose across",
                row -> table(row).playingWidthMm()));
        to.add(number("cloth_wool_pct", "%", "wool by mass", row -> cloth(row, Cloth::woolPct)));
        to.add(number("cloth_nylon_pct", "%", "nylon by mass", row -> cloth(row, Cloth::nylonPct)));
        to.add(number("cloth_polyester_pct", "%", "polyester by mass", row -> cloth(row, Cloth::polyesterPct)));
        to.add(number("cloth_weight_gsm", "g/m2", "mass per area", row -> cloth(row, Cloth::weightGsm)));
        to.add(optional(
                "cloth_weave", "weave of the cloth", row -> table(row).cloth().flatMap(Cloth::weave)));
        to.add(TableColumn.date(
                "cloth_fitted_on",
                "when the cloth was fitted",
                row -> table(row).cloth().flatMap(Cloth::fittedOn)));
    }

    private static void addSession(List<TableColumn<SessionRow>> to) {
        to.add(text(
                        "session",
                        "id of the session in its contribution",
                        row -> session(row).id())
                .always());
        to.add(optional(
                "visit",
                "name shared by the sessions of one visit",
                row -> session(row).visit()));
        to.add(optional("delivery", "ramp or cue", row -> session(row).delivery()));
        to.add(optional(
                INSTRUMENT,
                "id in its contribution of the instrument whose readings are its climate",
                row -> session(row).instrument()));
        to.add(TableColumn.time(
                "started_at",
                "as stated for the session",
                row -> session(row).startedAt().map(OffsetDateTime::toInstant)));
        to.add(TableColumn.time(
                "settled_from",
                "since when the climate was held",
                row -> session(row).settledFrom().map(OffsetDateTime::toInstant)));
        to.add(number(
                "bed_c", "Cel", "temperature of the bed", row -> session(row).statedBedC()));
    }

    private static void addTrials(List<TableColumn<SessionRow>> to) {
        to.add(TableColumn.count(TRIALS, "1", "how many trials it has", SessionRow::trials)
                .always());
        to.add(TableColumn.time("first_trial_at", "earliest start of a trial", SessionRow::firstAt));
        to.add(TableColumn.time("last_trial_at", "latest start of a trial", SessionRow::lastAt));
        to.add(number("climate_temp_min_c", "Cel", "coolest air of a trial", SessionRow::tempMinC));
        to.add(number("climate_temp_max_c", "Cel", "warmest air of a trial", SessionRow::tempMaxC));
        to.add(number("climate_rh_min_pct", "%", "driest air of a trial", SessionRow::rhMinPct));
        to.add(number("climate_rh_max_pct", "%", "dampest air of a trial", SessionRow::rhMaxPct));
    }

    private static Room room(SessionRow row) {
        return row.session().room();
    }

    private static PoolTable table(SessionRow row) {
        return row.session().table();
    }

    private static Session session(SessionRow row) {
        return row.session().session();
    }

    private static OptionalDouble cloth(SessionRow row, Function<Cloth, OptionalDouble> value) {
        return table(row).cloth().map(value).orElse(OptionalDouble.empty());
    }

    private static TableColumn<SessionRow> text(String name, String description, Function<SessionRow, String> value) {
        return TableColumn.text(name, description, value);
    }

    private static TableColumn<SessionRow> optional(
            String name, String description, Function<SessionRow, Optional<String>> value) {
        return TableColumn.text(name, description, row -> value.apply(row).orElse(""));
    }

    private static TableColumn<SessionRow> number(
            String name, String unit, String description, Function<SessionRow, OptionalDouble> value) {
        return TableColumn.number(
                name, unit, description, row -> value.apply(row).orElse(Double.NaN));
    }
}
