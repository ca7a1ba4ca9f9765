package org.tableweather.server.catalogue;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.tableweather.schema.check.Finding;
import org.tableweather.schema.folder.ContributionReader.ContributionListener;
import org.tableweather.schema.folder.SessionSink;
import org.tableweather.schema.folder.TrialSink;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * Takes one contribution into the catalogue while it is being read, in the caller's transaction. What it stores is not
 * published yet. When it finds something, or the reader does, the caller rolls back.
 */
public final class Intake implements ContributionListener, TrialSink, SessionSink, AutoCloseable {
    private final Connection connection;
    private final long contributionId;
    private final long accountId;
    private final List<Finding> findings = new ArrayList<>();
    private final Map<String, Integer> tableIds = new HashMap<>();
    private final Map<String, Integer> sessionIndex = new HashMap<>();
    private final Map<Integer, SessionRow> sessions = new LinkedHashMap<>();
    private int[] sessionIds = {};
    private int[] ordinals = {};
    private int rooms;
    private boolean exactPositions;
    private TrialCopy copy;

    Intake(Connection connection, long contributionId, long accountId) {
        this.connection = connection;
        this.contributionId = contributionId;
        this.accountId = accountId;
    }

    /**
     * What was stored.
     *
     * @param rooms rooms of the contribution
     * @param sessions sessions with trials
     * @param trials rows
     * @param exactPositions whether the archive tells a room's position more closely than 0.1 degrees
     */
    public record Stored(int rooms, int sessions, long trials, boolean exactPositions) {}

    /** Something that a step may end in. */
    @FunctionalInterface
    private interface Step {
        void run() throws SQLException, IOException;
    }

    @Override
    public void accept(Contribution contribution) throws IOException {
        guarded(() -> {
            if (RecordJson.holdsNul(contribution)) {
                throw new UnstorableValue("a text of contribution.json holds the character U+0000", null);
            }
            Map<String, Integer> roomIds = bindRooms(contribution);
            if (!findings.isEmpty()) {
                return;
            }
            addTables(contribution, roomIds);
            takeSessionIds(contribution);
            copy = TrialCopy.open(connection);
        });
    }

    private Map<String, Integer> bindRooms(Contribution contribution) throws SQLException {
        RoomTable table = new RoomTable(connection);
        Map<String, Integer> ids = new HashMap<>();
        // in one order for all, so that two contributions from the same rooms wait for each other and never in a ring
        List<Room> ordered = contribution.rooms().stream()
                .sorted(java.util.Comparator.comparing(Room::id))
                .toList();
        for (Room room : ordered) {
            String key = contribution.contributor().key() + "/" + room.id();
            OptionalInt id = table.bind(key, accountId, room);
            if (id.isPresent()) {
                ids.put(room.id(), id.getAsInt());
            } else {
                findings.add(IntakeFindings.room(contribution.rooms().indexOf(room), key));
            }
            exactPositions |= PublicPosition.isExact(room);
        }
        rooms = ids.size();
        return ids;
    }

    private void addTables(Contribution contribution, Map<String, Integer> roomIds) throws SQLException {
        RoomTable table = new RoomTable(connection);
        for (PoolTable entry : contribution.tables()) {
            Integer roomId = roomIds.get(entry.room());
            if (roomId != null) {
                table.add(contributionId, roomId, entry).ifPresent(id -> tableIds.put(entry.id(), id));
            }
        }
    }

    private void takeSessionIds(Contribution contribution) throws SQLException {
        int n = contribution.sessions().size();
        sessionIds = new int[n];
        ordinals = new int[n];
        try (PreparedStatement take = connection.prepareStatement(
                "SELECT nextval(pg_get_serial_sequence('session', 'id')) FROM generate_series(1, ?)")) {
            take.setInt(1, n);
            try (ResultSet ids = take.executeQuery()) {
                for (int i = 0; ids.next(); i++) {
                    sessionIds[i] = Math.toIntExact(ids.getLong(1));
                    sessionIndex.putIfAbsent(contribution.sessions().get(i).id(), i);
                }
            }
        }
    }

    @Override
    public void accept(int session, List<Trial> run) throws IOException {
        guarded(() -> {
            for (Trial trial : run) {
                copy.add(sessionIds[session], ++ordinals[session], trial);
            }
        });
    }

    @Override
    public void accept(SessionRecord session, List<Trial> trials) {
        Integer index = sessionIndex.get(session.session().id());
        if (copy != null && index != null) {
            sessions.put(index, SessionRow.of(session, trials));
        }
    }

    /**
     * Ends the copy and stores the sessions.
     *
     * @return what was stored; to be rolled back when there are {@link #findings}
     * @throws IOException when the database fails
     */
    public Stored finish() throws IOException {
        long trials = 0;
        for (int ordinal : ordinals) {
            trials += ordinal;
        }
        guarded(this::storeSessions);
        return new Stored(rooms, sessions.size(), trials, exactPositions);
    }

    private void storeSessions() throws SQLException, IOException {
        copy.finish();
        List<SessionTable.Placed> placed = new ArrayList<>();
        sessions.forEach((index, row) -> placed.add(new SessionTable.Placed(
                sessionIds[index], tableIds.get(row.session().table()), row)));
        SessionTable table = new SessionTable(connection);
        List<SessionTable.Placed> refused = table.insert(contributionId, placed);
        if (!refused.isEmpty()) {
            report(refused, table);
        }
    }

    private void report(List<SessionTable.Placed> refused, SessionTable table) throws SQLException {
        Map<String, SessionTable.Holder> holders = table.holders(
                refused.stream().map(session -> session.row().entry().digest()).toList());
        for (SessionTable.Placed session : refused) {
            SessionRecord entry = session.row().entry();
            findings.add(IntakeFindings.duplicate(
                    sessionIndex.get(entry.session().id()),
                    entry.sessionKey(),
                    contributionId,
                    holders.get(entry.digest())));
        }
    }

    /** What forbids to store it; refuses, each of them. */
    public List<Finding> findings() {
        return List.copyOf(findings);
    }

    /** Runs a step unless an earlier one found something; what the database has no place for becomes a finding. */
    private void guarded(Step step) throws IOException {
        if (!findings.isEmpty()) {
            return;
        }
        try {
            step.run();
        } catch (UnstorableValue e) {
            findings.add(IntakeFindings.unstorable(e.getMessage()));
        } catch (SQLException e) {
            notStored(e, new IOException("the database failed: " + e.getMessage(), e));
        } catch (IOException e) {
            notStored(e.getCause(), e);
        }
    }

    /** SQLSTATE 22021 and 22P05: a character that the database cannot hold; 22008: a time outside its years. */
    private void notStored(Throwable cause, IOException failure) throws IOException {
        if (cause instanceof SQLException sql
                && String.valueOf(sql.getSQLState()).matches("22021|22P05|22008")) {
            findings.add(IntakeFindings.unstorable(sql.getMessage()));
        } else {
            throw failure;
        }
    }

    /** Gives up what was not finished. The connection stays the caller's. */
    @Override
    public void close() {
        if (copy != null) {
            copy.abandon();
        }
    }
}
