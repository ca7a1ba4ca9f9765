package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.analyzers.standard.catalogue.Figures;
import org.tableweather.analyzers.standard.statistics.Caution;
import org.tableweather.analyzers.standard.statistics.NestedFit;

/** What a reader must know of one room beside the others, each with what would help. */
final class ComparisonWarnings {

    /** Below this most of a departure is the other rooms' (common practice, no source). */
    private static final double LITTLE_KNOWN = 0.5;

    private final RoomPool pool;
    private final NestedFit fit;
    private final PooledRoom room;
    private final boolean asked;
    private final List<RoomDeparture> departures;
    private final List<String> warnings = new ArrayList<>();

    ComparisonWarnings(RoomPool pool, NestedFit fit, int room, boolean asked, List<RoomDeparture> departures) {
        this.pool = pool;
        this.fit = fit;
        this.room = pool.rooms().get(room);
        this.asked = asked;
        this.departures = departures;
    }

    List<String> list() {
        warnings.addAll(pool.warnings());
        if (!asked) {
            warnings.add("Room " + room.key() + " was taken because it has the most usable trials; set room to yours.");
        }
        if (fit.cautions().contains(Caution.FEW_ROOMS)) {
            warnings.add(pool.rooms().size()
                    + " rooms, fewer than 5: how much rooms differ is hardly known, so departures are"
                    + " shrunken too much or too little; ask for more rooms.");
        }
        warnOfVariances();
        departures.forEach(this::warnOfLittleKnown);
        warnOfHere();
        return List.copyOf(warnings);
    }

    private void warnOfVariances() {
        if (fit.cautions().contains(Caution.ROOM_ZERO)) {
            warnings.add(
                    "A room variance is estimated as zero, on the boundary of what it can be: departures of that kind are"
                            + " zero in every room; more sessions in each room may show what is hidden in their scatter.");
        }
        if (fit.cautions().contains(Caution.CORRELATION_AT_BOUND)) {
            warnings.add(
                    "Room slopes and room levels cannot be told apart with these rooms: their correlation is on the"
                            + " boundary; hold sessions at more than one humidity in each room.");
        }
        if (fit.cautions().contains(Caution.SESSION_IN_ROOM)) {
            warnings.add("No room has two sessions: what is called a room's departure may be its one session's; repeat"
                    + " sessions.");
        }
        if (!fit.dropped().isEmpty()) {
            warnings.add("Temperature or the bend over humidity goes with other columns and was left out; hold sessions"
                    + " where they do not go together.");
        }
    }

    private void warnOfLittleKnown(RoomDeparture one) {
        if (one.roomSd() > 0 && one.reliability() < LITTLE_KNOWN) {
            warnings.add("Of this room's " + (one.name().equals(RoomDeparture.LEVEL) ? "level" : "slope")
                    + " little is known (" + Figures.fixed(100 * one.reliability(), 0)
                    + " % of what rooms differ by): most of its departure is shrunken away; hold the sessions named.");
        }
    }

    private void warnOfHere() {
        if (room.sessions().size() < 3) {
            warnings.add("This room has " + Figures.counted(room.sessions().size(), "session")
                    + ": level and slope rest on the other rooms; hold sessions at other humidities.");
        }
    }
}
