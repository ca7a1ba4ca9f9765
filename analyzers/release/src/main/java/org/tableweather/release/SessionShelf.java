package org.tableweather.release;

import java.io.Closeable;
import java.io.DataInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.tableweather.schema.folder.SessionDigest;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Takes sessions in any order and gives them back in the order of a release; the trials wait on disk. */
final class SessionShelf implements ReleaseInput.Sink, Closeable {
    private static final double STEPS_PER_DEGREE = 10;

    private final Spill spill;
    private final Map<Place, SpilledSession> sessions = new LinkedHashMap<>();
    private final Map<String, ReleasedContribution> contributions = new TreeMap<>();
    private final Map<String, ReleaseInput.Origin> origins = new HashMap<>();
    private final Map<String, String> instruments = new HashMap<>();

    SessionShelf(Path folder) throws IOException {
        spill = new Spill(folder);
    }

    private record Place(String contribution, String sessionKey) {}

    private record ShotOfKind(Kind kind, String shot) {}

    @Override
    public void contribution(ReleasedContribution contribution, ReleaseInput.Origin origin) throws IOException {
        if (contributions.put(contribution.id(), contribution) != null) {
            throw new IOException("contribution " + contribution.id() + " is given twice: name each folder once");
        }
        origins.put(contribution.id(), origin);
    }

    @Override
    public void session(String contribution, SessionRecord given, List<Trial> trials) throws IOException {
        SessionRecord session = published(given);
        boolean holds = SessionDigest.of(session, trials).equals(session.digest());
        SessionRow row = SessionRow.of(contribution, session, holds, trials);
        Spill.Extent json = spill.put(ReleaseJson.line(row));
        sessions.put(
                new Place(contribution, session.sessionKey()),
                new SpilledSession(
                        contribution,
                        session.roomKey(),
                        session.sessionKey(),
                        session.digest(),
                        instrument(session),
                        trials.size(),
                        json,
                        parts(trials)));
    }

    /** The same text for the same id: there are many sessions and few instruments. */
    private String instrument(SessionRecord session) {
        String id = session.session().instrument().orElse("");
        return instruments.computeIfAbsent(id, same -> same);
    }

    private List<SpilledSession.Part> parts(List<Trial> trials) throws IOException {
        Map<ShotOfKind, List<Integer>> byShot = new HashMap<>();
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            byShot.computeIfAbsent(new ShotOfKind(trial.kind(), trial.shot()), shot -> new ArrayList<>())
                    .add(i);
        }
        List<SpilledSession.Part> parts = new ArrayList<>(byShot.size());
        for (Map.Entry<ShotOfKind, List<Integer>> part : byShot.entrySet()) {
            parts.add(part(part.getKey(), part.getValue(), trials));
        }
        return List.copyOf(parts);
    }

    private SpilledSession.Part part(ShotOfKind shot, List<Integer> places, List<Trial> trials) throws IOException {
        long[] filled = {-1L};
        Spill.Extent extent = spill.put(to -> {
            for (int place : places) {
                long mask = TrialCodec.mask(trials.get(place));
                filled[0] &= mask;
                TrialCodec.write(trials.get(place), place + 1, mask, to);
            }
        });
        return new SpilledSession.Part(shot.kind(), shot.shot(), places.size(), filled[0], extent);
    }

    /** What was taken, by id. */
    Collection<ReleasedContribution> contributions() {
        return contributions.values();
    }

    /** Every session once, in order; of equal ones the first in that order. */
    List<SpilledSession> sorted() throws IOException {
        Map<String, SpilledSession> byDigest = new HashMap<>();
        for (SpilledSession session : sessions.values()) {
            if (!contributions.containsKey(session.contribution())) {
                throw new IOException("session " + session.sessionKey() + " came with contribution "
                        + session.contribution() + ", which was not handed over");
            }
            byDigest.merge(session.digest(), session, (a, b) -> SpilledSession.ORDER.compare(a, b) <= 0 ? a : b);
        }
        return byDigest.values().stream().sorted(SpilledSession.ORDER).toList();
    }

    /**
     * What was recorded beside the trials of these sessions, read from the contributions now.
     *
     * @throws IOException when a contribution cannot be read again
     */
    RecordedRows recorded(List<SpilledSession> released) throws IOException {
        RecordedRows rows = new RecordedRows(spill);
        Map<String, List<SpilledSession>> byContribution = released.stream()
                .collect(Collectors.groupingBy(SpilledSession::contribution, TreeMap::new, Collectors.toList()));
        for (Map.Entry<String, List<SpilledSession>> one : byContribution.entrySet()) {
            rows.read(origins.get(one.getKey()), one.getValue());
        }
        return rows;
    }

    SessionRow row(SpilledSession session) throws IOException {
        return ReleaseJson.read(
                spill.text(session.row()).getBytes(java.nio.charset.StandardCharsets.UTF_8),
                SessionRow.class,
                session.sessionKey());
    }

    /** Takes the rows of one part in order. */
    interface Rows {
        void row(int ordinal, Trial trial) throws IOException;
    }

    void trials(SpilledSession.Part part, String session, Rows to) throws IOException {
        TrialParts parts = new TrialParts();
        int[] ordinal = new int[1];
        try (DataInputStream in = spill.take(part.extent())) {
            for (int i = 0; i < part.rows(); i++) {
                Trial trial = TrialCodec.read(in, parts, session, part.kind(), part.shot(), n -> ordinal[0] = n);
                to.row(ordinal[0], trial);
            }
        }
    }

    /** As the public may see it: the room's position to 0.1°. */
    private static SessionRecord published(SessionRecord session) {
        Room room = session.room();
        Room coarse = new Room(
                room.id(),
                room.name(),
                room.country(),
                rounded(room.latitude()),
                rounded(room.longitude()),
                room.altitudeM(),
                room.climateControl());
        return new SessionRecord(
                session.roomKey(),
                session.sessionKey(),
                session.digest(),
                session.invented(),
                coarse,
                session.table(),
                session.session(),
                session.ballSet(),
                session.cue(),
                session.instrument());
    }

    private static OptionalDouble rounded(OptionalDouble degrees) {
        return degrees.isEmpty()
                ? degrees
                : OptionalDouble.of(Math.rint(degrees.getAsDouble() * STEPS_PER_DEGREE) / STEPS_PER_DEGREE);
    }

    @Override
    public void close() throws IOException {
        spill.close();
    }
}
