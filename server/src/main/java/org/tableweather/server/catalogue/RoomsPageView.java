package org.tableweather.server.catalogue;

import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import org.tableweather.server.web.Address;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Words;

/**
 * The list of rooms as a page shows it.
 *
 * @param rooms rows
 * @param shot that the list is limited to; empty for all
 * @param next cursor of the next page; empty on the last
 */
record RoomsPageView(List<Row> rooms, String shot, String next) {

    RoomsPageView {
        rooms = List.copyOf(rooms);
    }

    /**
     * One room.
     *
     * @param key its name over all contributions
     * @param address of its page
     * @param name as people call it
     * @param country code; a dash when not stated
     * @param altitude metres; a dash when not stated
     * @param control what heats, cools, humidifies or dries it
     * @param sessions how many
     * @param trials how many
     * @param invented whether any are made up
     */
    record Row(
            String key,
            String address,
            String name,
            String country,
            String altitude,
            String control,
            String sessions,
            String trials,
            boolean invented) {

        static Row of(RoomView room) {
            return new Row(
                    room.key(),
                    Address.of("/rooms/", room.key()),
                    room.name().orElse(room.key()),
                    room.country().orElse(Words.NOTHING),
                    Words.number(room.altitudeM().orElse(null), 0),
                    room.climateControl().isEmpty() ? Words.NOTHING : String.join(", ", room.climateControl()),
                    Words.count(room.sessions()),
                    Words.count(room.trials()),
                    room.invented());
        }
    }

    static RoomsPageView of(Page<RoomView> page, MultivaluedMap<String, String> query) {
        String shot = query.getFirst("shot");
        return new RoomsPageView(
                page.items().stream().map(Row::of).toList(),
                shot == null ? "" : shot,
                page.next().orElse(""));
    }
}
