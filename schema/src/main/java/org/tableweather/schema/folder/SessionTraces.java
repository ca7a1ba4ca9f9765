package org.tableweather.schema.folder;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.geometry.Mark;
import org.tableweather.schema.geometry.MarkedPath;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.record.ClimateReading;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.table.ClimateColumn;
import org.tableweather.schema.table.ContactColumn;

/**
 * What a contribution holds of one session beside its trials: the marked paths and the log around it. Memory holds that
 * session alone, at most {@value #MAX_POINTS} marked points and the readings of its time.
 *
 * @param paths the ball's centre at each mark, by trial, in the order of the file
 * @param log readings of the session's instrument in the room's air, in the order of time, as read
 * @param complete whether all marked points of the session are here
 * @param position of the session in {@code contribution.json}, from 0
 * @param shots that the contribution defines itself
 */
public record SessionTraces(
        Map<String, List<TablePoint>> paths,
        List<ClimateReading> log,
        boolean complete,
        int position,
        List<Shot> shots) {
    /** Most marked points of a session that are kept. */
    public static final int MAX_POINTS = 20_000;

    public SessionTraces {
        paths = Map.copyOf(paths);
        log = List.copyOf(log);
        shots = List.copyOf(shots);
    }

    /**
     * Which session.
     *
     * @param id of it in the contribution
     * @param from first reading of the log
     * @param to last reading of the log
     */
    public record Wanted(String id, Instant from, Instant to) {}

    /**
     * Reads them from a contribution that passed the checks.
     *
     * @param source folder or archive
     * @param wanted the session
     * @return empty when the contribution has no such session
     * @throws IOException when it cannot be read
     */
    public static Optional<SessionTraces> read(ContributionSource source, Wanted wanted) throws IOException {
        ContributionDocument document = SecondReading.document(source);
        SessionIndex index = new SessionIndex(document, new ClimateLog.ByInstrument(), new Findings());
        int position = index.find(wanted.id());
        if (position < 0) {
            return Optional.empty();
        }
        ContactPaths paths = new ContactPaths(session -> session == position, MAX_POINTS);
        SecondReading.rows(
                source, ContactRows.FILE, ContactColumn.headers(), new ContactRows(index, paths, new Findings()));
        return Optional.of(new SessionTraces(
                onTable(document, index, position, paths),
                log(source, document, wanted),
                paths.isComplete(),
                position,
                document.contribution().orElseThrow().shots()));
    }

    private static List<ClimateReading> log(ContributionSource source, ContributionDocument document, Wanted wanted)
            throws IOException {
        Optional<String> instrument = document.contribution().orElseThrow().sessions().stream()
                .filter(session -> session.id().equals(wanted.id()))
                .findFirst()
                .flatMap(Session::instrument);
        if (instrument.isEmpty()) {
            return List.of();
        }
        long from = wanted.from().getEpochSecond();
        long to = wanted.to().getEpochSecond();
        ClimateRows rows = new ClimateRows(
                document.contribution(),
                new Findings(),
                (id, second) -> id.equals(instrument.get()) && second >= from && second <= to);
        SecondReading.rows(source, ClimateRows.FILE, ClimateColumn.headers(), rows);
        ClimateLog log = rows.close().find(instrument.get());
        return log == null ? List.of() : log.readings(instrument.get());
    }

    private static Map<String, List<TablePoint>> onTable(
            ContributionDocument document, SessionIndex index, int position, ContactPaths paths) {
        Map<String, List<TablePoint>> all = new LinkedHashMap<>();
        Optional<TableSize> size = index.tableSize(position);
        if (size.isEmpty()) {
            return all;
        }
        Cameras cameras = new Cameras(document.contribution().orElseThrow().marks());
        paths.each(position, (trial, path) -> {
            List<Contact> contacts = paths.contacts(path, index.id(position), trial, (seq, row) -> {});
            points(contacts, size.get(), cameras).ifPresent(points -> all.put(trial, points));
        });
        return all;
    }

    private static Optional<List<TablePoint>> points(List<Contact> contacts, TableSize size, Cameras cameras) {
        if (Cameras.areFrames(contacts)) {
            return cameras.path(contacts, size, new Findings())
                    .map(MarkedPath::marks)
                    .map(marks -> marks.stream().map(Mark::at).toList());
        }
        List<TablePoint> points = new ArrayList<>();
        for (Contact contact :
                contacts.stream().sorted(Comparator.comparingInt(Contact::seq)).toList()) {
            boolean inDiamonds = !Double.isNaN(contact.xDia() + contact.yDia());
            TablePoint point = inDiamonds
                    ? size.point(contact.xDia(), contact.yDia())
                    : new TablePoint(contact.xM(), contact.yM());
            if (Double.isNaN(point.xM() + point.yM())) {
                return Optional.empty();
            }
            points.add(point);
        }
        return Optional.of(points);
    }
}
