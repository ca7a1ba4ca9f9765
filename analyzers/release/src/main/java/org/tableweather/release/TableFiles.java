package org.tableweather.release;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.parquet.io.LocalOutputFile;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Writes the tables of a release: sessions by room group, trials by kind and room group, and with them what was recorded. */
final class TableFiles {
    private final SessionShelf shelf;
    private final RecordedTables recorded;
    private final ReleaseFiles files;

    TableFiles(SessionShelf shelf, RecordedTables recorded, ReleaseFiles files) {
        this.shelf = shelf;
        this.recorded = recorded;
        this.files = files;
    }

    private record Run(SpilledSession session, SpilledSession.Part part) {
        /** Sessions come in order, and sorting keeps it. */
        static final Comparator<Run> BY_SHOT =
                Comparator.comparing(run -> run.part().shot());
    }

    /** Writes all of them. */
    void write(List<SpilledSession> sessions, RoomGroups groups) throws IOException {
        Map<String, List<SpilledSession>> byGroup = sessions.stream()
                .collect(Collectors.groupingBy(
                        session -> groups.of(session.roomKey()), TreeMap::new, Collectors.toList()));
        for (Map.Entry<String, List<SpilledSession>> group : byGroup.entrySet()) {
            sessions(group.getKey(), group.getValue());
            for (Map.Entry<Kind, List<Run>> kind : runs(group.getValue()).entrySet()) {
                trials(kind.getKey(), group.getKey(), kind.getValue());
            }
            recorded.write(group.getKey(), group.getValue());
        }
    }

    private void sessions(String group, List<SpilledSession> sessions) throws IOException {
        String path = ReleaseFolder.sessionFile(group);
        try (TableWriter<SessionRow> writer = TableWriter.open(
                SessionColumns.TABLE,
                Set.of(),
                Map.of(TrialTable.SESSION_KEY, sessions.size(), TrialTable.SESSION_DIGEST, sessions.size()),
                ZstdCodec.thorough(),
                new LocalOutputFile(files.place(path)))) {
            for (SpilledSession session : sessions) {
                writer.write(shelf.row(session));
            }
        }
        files.written(path, Optional.of((long) sessions.size()), List.of());
    }

    private static Map<Kind, List<Run>> runs(List<SpilledSession> sessions) {
        Map<Kind, List<Run>> byKind = new TreeMap<>(Comparator.comparing(Kind::schemaName));
        for (SpilledSession session : sessions) {
            for (SpilledSession.Part part : session.parts()) {
                byKind.computeIfAbsent(part.kind(), kind -> new ArrayList<>()).add(new Run(session, part));
            }
        }
        byKind.values().forEach(runs -> runs.sort(Run.BY_SHOT));
        return byKind;
    }

    private void trials(Kind kind, String group, List<Run> runs) throws IOException {
        String path = "trials/kind=" + kind.schemaName() + "/room_group=" + group + "/part-0.parquet";
        long rows;
        try (TableWriter<TrialRow> writer = TableWriter.open(
                TrialTable.RELEASED,
                filled(runs),
                Map.of(),
                ZstdCodec.thorough(),
                new LocalOutputFile(files.place(path)))) {
            for (Run run : runs) {
                SessionRecord session = shelf.row(run.session()).session();
                shelf.trials(
                        run.part(),
                        session.session().id(),
                        (ordinal, trial) -> writer.write(row(run.session(), session, ordinal, trial)));
            }
            rows = writer.rows();
        }
        files.written(path, Optional.of(rows), shots(runs));
    }

    private static TrialRow row(SpilledSession spilled, SessionRecord session, int ordinal, Trial trial) {
        return new TrialRow(session, "", spilled.trials(), ordinal, trial);
    }

    private static Set<String> filled(List<Run> runs) {
        long all = -1;
        for (Run run : runs) {
            all &= run.part().filled();
        }
        return new HashSet<>(TrialCodec.columns(all));
    }

    private static List<Manifest.ShotRun> shots(List<Run> runs) {
        Map<String, Long> rows = new TreeMap<>();
        runs.forEach(run -> rows.merge(run.part().shot(), (long) run.part().rows(), Long::sum));
        return rows.entrySet().stream()
                .map(entry -> new Manifest.ShotRun(entry.getKey(), entry.getValue()))
                .toList();
    }
}
