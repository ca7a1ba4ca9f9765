package org.tableweather.schema.folder;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Cue;
import org.tableweather.schema.record.Instrument;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** The sessions of a contribution with what they refer to. */
final class SessionEntries {
    private final Contribution contribution;
    private final Map<String, Room> rooms;
    private final Map<String, PoolTable> tables;
    private final Map<String, BallSet> ballSets;
    private final Map<String, Cue> cues;
    private final Map<String, Instrument> instruments;
    private final SessionDigest digest = new SessionDigest();

    SessionEntries(Contribution contribution) {
        this.contribution = contribution;
        this.rooms = byId(contribution.rooms(), Room::id);
        this.tables = byId(contribution.tables(), PoolTable::id);
        this.ballSets = byId(contribution.ballSets(), BallSet::id);
        this.cues = byId(contribution.cues(), Cue::id);
        this.instruments = byId(contribution.instruments(), Instrument::id);
    }

    private static <T> Map<String, T> byId(List<T> entries, Function<T, String> id) {
        Map<String, T> map = new HashMap<>();
        entries.forEach(entry -> map.putIfAbsent(id.apply(entry), entry));
        return map;
    }

    int size() {
        return contribution.sessions().size();
    }

    Session session(int index) {
        return contribution.sessions().get(index);
    }

    /** The session with its digest; the contribution was found to be whole. */
    SessionRecord record(int index, List<Trial> trials) {
        Session session = session(index);
        PoolTable table = tables.get(session.table());
        Room room = rooms.get(table.room());
        Optional<BallSet> ballSet = session.ballSet().map(ballSets::get);
        Optional<Cue> cue = session.cue().map(cues::get);
        Optional<Instrument> instrument = session.instrument().map(instruments::get);
        boolean invented = contribution.invented().orElse(false);
        String roomKey = contribution.contributor().key() + "/" + room.id();
        String hash = digest.of(invented, room, table, session, ballSet, cue, instrument, trials);
        return new SessionRecord(
                roomKey, roomKey + "/" + session.id(), hash, invented, room, table, session, ballSet, cue, instrument);
    }
}
