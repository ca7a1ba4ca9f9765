package org.tableweather.analyzers.standard.catalogue.draft;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;

/** A session of which only some things are stated. */
public final class SessionDraft {

    private final String room;
    private final String session;
    private OptionalDouble lengthMm = OptionalDouble.empty();
    private OptionalDouble widthMm = OptionalDouble.empty();
    private OptionalDouble altitudeM = OptionalDouble.empty();
    private Optional<BallSet> balls = Optional.empty();
    private Optional<OffsetDateTime> startedAt = Optional.empty();
    private Optional<OffsetDateTime> settledFrom = Optional.empty();
    private Optional<String> shooter = Optional.empty();
    private Optional<String> delivery = Optional.empty();
    private Optional<Boolean> everyAttemptLogged = Optional.empty();

    public SessionDraft(String room, String session) {
        this.room = room;
        this.session = session;
    }

    public SessionDraft table(double length, double width) {
        lengthMm = OptionalDouble.of(length);
        widthMm = OptionalDouble.of(width);
        return this;
    }

    public SessionDraft balls(double diameterMm, double massG) {
        balls = Optional.of(new BallSet(
                "b",
                Optional.empty(),
                OptionalDouble.of(diameterMm),
                OptionalDouble.of(massG),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    public SessionDraft altitude(double metres) {
        altitudeM = OptionalDouble.of(metres);
        return this;
    }

    public SessionDraft started(String time) {
        startedAt = Optional.of(OffsetDateTime.parse(time));
        return this;
    }

    public SessionDraft settled(String time) {
        settledFrom = Optional.of(OffsetDateTime.parse(time));
        return this;
    }

    public SessionDraft shooter(String name) {
        shooter = Optional.of(name);
        return this;
    }

    public SessionDraft delivery(String how) {
        delivery = Optional.of(how);
        return this;
    }

    public SessionDraft everyAttemptLogged(boolean stated) {
        everyAttemptLogged = Optional.of(stated);
        return this;
    }

    public SessionRecord build() {
        Room where = new Room(
                room,
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                altitudeM,
                List.of());
        PoolTable table =
                new PoolTable("t", room, lengthMm, widthMm, Optional.empty(), Optional.empty(), Optional.empty());
        String key = room + "/" + session;
        return new SessionRecord(
                room, key, key, true, where, table, session(), balls, Optional.empty(), Optional.empty());
    }

    private Session session() {
        return new Session(
                session,
                "t",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                shooter,
                startedAt,
                settledFrom,
                delivery,
                Optional.empty(),
                everyAttemptLogged,
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }
}
