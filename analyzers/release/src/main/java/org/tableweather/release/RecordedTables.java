package org.tableweather.release;

import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.parquet.io.LocalOutputFile;
import org.tableweather.release.RecordedRows.Owner;

/** Writes the tables of readings and of marked points by room group; a group that has none gets no file. */
final class RecordedTables {
    /** The folder of the tables of readings. */
    static final String READINGS = "readings";
    /** The folder of the tables of marked points. */
    static final String CONTACTS = "contacts";

    private final RecordedRows recorded;
    private final ReleaseFiles files;

    RecordedTables(RecordedRows recorded, ReleaseFiles files) {
        this.recorded = recorded;
        this.files = files;
    }

    private record Log(String roomKey, Owner instrument) {
        static final Comparator<Log> ORDER = Comparator.comparing(Log::roomKey)
                .thenComparing(log -> log.instrument().contribution())
                .thenComparing(log -> log.instrument().id());
    }

    private interface Writing<R> {
        void write(TableWriter<R> to) throws IOException;
    }

    /**
     * Writes the tables of a group.
     *
     * @param group of rooms
     * @param sessions of it, in order
     */
    void write(String group, List<SpilledSession> sessions) throws IOException {
        List<Log> logs = sessions.stream()
                .map(session -> new Log(session.roomKey(), Owner.instrument(session)))
                .distinct()
                .filter(log -> recorded.readings().has(log.instrument()))
                .sorted(Log.ORDER)
                .toList();
        if (!logs.isEmpty()) {
            write(READINGS, group, ReadingTable.TABLE, to -> readings(logs, to));
        }
        List<SpilledSession> marked = sessions.stream()
                .filter(session -> recorded.contacts().has(Owner.session(session)))
                .toList();
        if (!marked.isEmpty()) {
            write(CONTACTS, group, ContactTable.TABLE, to -> contacts(marked, to));
        }
    }

    private <R> void write(String folder, String group, ParquetTable<R> table, Writing<R> rows) throws IOException {
        String path = folder + "/room_group=" + group + "/part-0.parquet";
        long written;
        try (TableWriter<R> writer = TableWriter.open(
                table, Set.of(), Map.of(), ZstdCodec.thorough(), new LocalOutputFile(files.place(path)))) {
            rows.write(writer);
            written = writer.rows();
        }
        files.written(path, Optional.of(written), List.of());
    }

    private void readings(List<Log> logs, TableWriter<ReadingRow> to) throws IOException {
        for (Log log : logs) {
            Owner instrument = log.instrument();
            recorded.readings()
                    .each(
                            instrument,
                            reading -> to.write(new ReadingRow(log.roomKey(), instrument.contribution(), reading)));
        }
    }

    private void contacts(List<SpilledSession> sessions, TableWriter<ContactRow> to) throws IOException {
        for (SpilledSession session : sessions) {
            recorded.contacts().each(Owner.session(session), contact -> to.write(new ContactRow(session, contact)));
        }
    }
}
