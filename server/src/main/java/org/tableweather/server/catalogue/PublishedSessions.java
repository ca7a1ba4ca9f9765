package org.tableweather.server.catalogue;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** What analyses read: which sessions are published, and their trials in canonical order. */
@ApplicationScoped
public class PublishedSessions {
    private static final int TRIALS_AT_ONCE = 50_000;

    private final DataSource database;

    PublishedSessions(DataSource database) {
        this.database = database;
    }

    /** Takes sessions. */
    @FunctionalInterface
    public interface Receiver {
        /**
         * Takes one session.
         *
         * @param id its number here
         * @param session as it was contributed, the room's position rounded
         * @param trials all of them in {@link Trial#CANONICAL_ORDER}
         */
        void accept(int id, SessionRecord session, List<Trial> trials) throws SQLException, IOException;
    }

    /** All published sessions, by number. */
    public List<PublishedSession> all() {
        return list(new Where().and("s.published"));
    }

    /** All sessions of these contributions, published or withdrawn, by number. */
    public List<PublishedSession> ofContributions(Collection<Long> contributions) {
        return list(new Where().and("s.contribution_id = ANY (?)", (Object) contributions.toArray(Long[]::new)));
    }

    /** A published session with all that was contributed of it, and the contribution that it came with. */
    public record Whole(PublishedSession session, long contribution, SessionRecord entry, List<Trial> trials) {}

    /**
     * The published session of this key, the latest if there are several; empty without.
     *
     * @param most trials that are read; empty {@link Whole#trials} when it has more
     */
    public Optional<Whole> find(String key, long most) {
        return find(new Where().and("s.published AND s.key = ?", key), most);
    }

    /** The same by its number here. */
    public Optional<Whole> find(int id, long most) {
        return find(new Where().and("s.published AND s.id = ?", id), most);
    }

    private Optional<Whole> find(Where where, long most) {
        List<PublishedSession> found = list(where);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        PublishedSession session = found.get(found.size() - 1);
        Whole[] whole = new Whole[1];
        if (session.trials() > most) {
            return Optional.of(new Whole(session, contribution(session.id()), entry(session.id()), List.of()));
        }
        read(
                List.of(session),
                (id, entry, trials) -> whole[0] = new Whole(session, contribution(id), entry, List.copyOf(trials)));
        return Optional.of(whole[0]);
    }

    private SessionRecord entry(int id) {
        try (TrialReading reading = TrialReading.begin(database)) {
            return reading.entries(List.of(id)).get(id);
        } catch (SQLException | IOException e) {
            throw new IllegalStateException("session " + id + " cannot be read", e);
        }
    }

    private long contribution(int id) {
        try (Connection connection = database.getConnection();
                PreparedStatement select =
                        connection.prepareStatement("SELECT contribution_id FROM session WHERE id = ?")) {
            select.setInt(1, id);
            try (ResultSet row = select.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        } catch (SQLException e) {
            throw new IllegalStateException("session " + id + " cannot be read", e);
        }
    }

    private List<PublishedSession> list(Where where) {
        String sql = "SELECT s.id, r.key, s.key, s.digest, s.invented, s.trials FROM session s"
                + " JOIN room r ON r.id = s.room_id WHERE " + where.sql() + " ORDER BY s.id";
        try (Connection connection = database.getConnection();
                PreparedStatement select = connection.prepareStatement(sql)) {
            where.set(select, 1);
            try (ResultSet row = select.executeQuery()) {
                List<PublishedSession> sessions = new ArrayList<>();
                while (row.next()) {
                    sessions.add(new PublishedSession(
                            row.getInt(1),
                            row.getString(2),
                            row.getString(3),
                            row.getString(4),
                            row.getBoolean(5),
                            row.getLong(6)));
                }
                return sessions;
            }
        } catch (SQLException e) {
            throw new IllegalStateException("the published sessions cannot be read", e);
        }
    }

    /** The digests of all published sessions, sorted. */
    public List<String> digests() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT digest FROM session WHERE published")) {
            List<String> digests = new ArrayList<>();
            while (row.next()) {
                digests.add(row.getString(1));
            }
            return digests.stream().sorted().toList();
        } catch (SQLException e) {
            throw new IllegalStateException("the published sessions cannot be read", e);
        }
    }

    /**
     * Reads sessions with their trials, one at a time.
     *
     * @param sessions which
     * @param receiver takes them, ordered by number
     */
    public void read(Collection<PublishedSession> sessions, Receiver receiver) {
        try (TrialReading reading = TrialReading.begin(database)) {
            List<PublishedSession> part = new ArrayList<>();
            long trials = 0;
            for (PublishedSession session : sorted(sessions)) {
                if (trials + session.trials() > TRIALS_AT_ONCE) {
                    read(reading, part, receiver);
                    part.clear();
                    trials = 0;
                }
                part.add(session);
                trials += session.trials();
            }
            read(reading, part, receiver);
        } catch (SQLException | IOException e) {
            throw new IllegalStateException("the trials of the sessions cannot be read", e);
        }
    }

    private static List<PublishedSession> sorted(Collection<PublishedSession> sessions) {
        return sessions.stream()
                .sorted(Comparator.comparingInt(PublishedSession::id))
                .toList();
    }

    private static void read(TrialReading reading, List<PublishedSession> part, Receiver receiver)
            throws SQLException, IOException {
        List<Integer> ids = part.stream().map(PublishedSession::id).toList();
        Map<Integer, SessionRecord> entries = reading.entries(ids);
        Map<Integer, List<Trial>> trials = new HashMap<>();
        String sql = "SELECT t.session_id, " + TrialColumn.sqlNames() + " FROM trial t";
        reading.rows(sql, ids, new Where(), "", row -> {
            int id = row.getInt(1);
            String local = entries.get(id).session().id();
            trials.computeIfAbsent(id, any -> new ArrayList<>()).add(TrialRow.read(row, 2, local));
            return true;
        });
        for (int id : ids) {
            List<Trial> ofSession = trials.get(id);
            ofSession.sort(Trial.CANONICAL_ORDER);
            receiver.accept(id, entries.get(id), ofSession);
        }
    }
}
