package org.tableweather.server.catalogue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.tableweather.server.web.Address;
import org.tableweather.server.web.Page;
import org.tableweather.server.web.Words;

/**
 * One room and its sessions as a page shows them.
 *
 * @param room its row
 * @param position latitude and longitude, rounded; empty when not stated
 * @param shots ids of the shots in the sessions shown
 * @param sessions rows
 * @param next cursor of the next page; empty on the last
 */
record RoomPageView(
        RoomsPageView.Row room, String position, List<String> shots, List<SessionLine> sessions, String next) {
    private static final ObjectMapper JSON = new ObjectMapper();

    RoomPageView {
        shots = List.copyOf(shots);
        sessions = List.copyOf(sessions);
    }

    /**
     * One session.
     *
     * @param id its number here
     * @param name its id in the room
     * @param address of its page
     * @param started first known time, universal
     * @param temp °C, lowest to highest
     * @param rh %, lowest to highest
     * @param shots ids, separated by commas
     * @param trials how many
     */
    record SessionLine(
            int id, String name, String address, String started, String temp, String rh, String shots, String trials) {

        static SessionLine of(SessionView session) {
            return new SessionLine(
                    session.id(),
                    session.key().substring(session.room().length() + 1),
                    Address.of("/sessions/", session.key()),
                    Words.minute(session.startedAt()),
                    Words.range(session.tempMinC(), session.tempMaxC(), 1),
                    Words.range(session.rhMinPct(), session.rhMaxPct(), 0),
                    String.join(", ", shotIds(session)),
                    Words.count(session.trials()));
        }
    }

    static RoomPageView of(RoomView room, Page<SessionView> page) {
        return new RoomPageView(
                RoomsPageView.Row.of(room),
                position(room),
                page.items().stream()
                        .flatMap(session -> shotIds(session).stream())
                        .distinct()
                        .sorted()
                        .toList(),
                page.items().stream().map(SessionLine::of).toList(),
                page.next().orElse(""));
    }

    private static String position(RoomView room) {
        Optional<Double> north = room.latitude();
        Optional<Double> east = room.longitude();
        return north.isEmpty() || east.isEmpty()
                ? ""
                : Words.number(north.get(), 1) + "° north, " + Words.number(east.get(), 1) + "° east";
    }

    private static List<String> shotIds(SessionView session) {
        List<String> ids = new ArrayList<>();
        try {
            JSON.readTree(session.shots())
                    .forEach(shot -> ids.add(shot.path("shot").asText()));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the database gives JSON", e);
        }
        return ids.stream().distinct().toList();
    }
}
