package org.tableweather.server.analysis;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.UriInfo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.tableweather.server.catalogue.RoomClimates;
import org.tableweather.server.web.Address;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.KnownParameters;
import org.tableweather.server.web.Refusal;

/** How a room's shots are expected to play in today's air. */
@Path("/drift")
@Produces("text/html;charset=UTF-8")
class DriftPages {
    private static final int MOST_ROOMS = 2000;
    private static final int MOST_SHOTS = 4;

    private final RoomClimates climates;
    private final DriftToday drift;
    private final RunCallers callers;

    DriftPages(RoomClimates climates, DriftToday drift, RunCallers callers) {
        this.climates = climates;
        this.drift = drift;
        this.callers = callers;
    }

    /**
     * A room to choose.
     *
     * @param key of it; empty for none of the pool
     * @param name as people call it
     * @param chosen whether it is the one
     */
    record RoomChoice(String key, String name, boolean chosen) {}

    /**
     * What is shown.
     *
     * @param question as asked
     * @param problem what is to be mended; empty when nothing
     * @param rooms to choose from
     * @param room name of the chosen one; empty for one that is not in the pool
     * @param roomAddress path of its page
     * @param now the air now
     * @param usual what it is held against
     * @param shots what is expected of each
     */
    record View(
            DriftQuestion question,
            String problem,
            List<RoomChoice> rooms,
            String room,
            String roomAddress,
            Optional<DriftQuestion.Air> now,
            Optional<DriftQuestion.Air> usual,
            List<ShotDrift> shots) {}

    record DriftPage(View view) implements TemplateInstance {}

    @GET
    @Operation(hidden = true)
    public TemplateInstance drift(@Context UriInfo uri) {
        KnownParameters.only(uri, DriftQuestion.PARAMETERS);
        DriftQuestion question = DriftQuestion.of(uri.getQueryParameters());
        List<RoomChoice> rooms = rooms(question.room());
        String name = rooms.stream()
                .filter(room -> room.chosen() && !room.key().isEmpty())
                .map(RoomChoice::name)
                .findFirst()
                .orElse("");
        if (!question.room().isEmpty() && name.isEmpty()) {
            throw new Refusal(
                    ErrorCode.NOT_FOUND,
                    "room " + question.room() + " has no published session: the page of rooms lists those that have");
        }
        String problem = question.problem();
        Optional<DriftQuestion.Air> now = problem.isEmpty() ? question.airNow(climates) : Optional.empty();
        if (now.isEmpty() && problem.isEmpty() && question.isAsked()) {
            problem = "No attempt of this room has a climate: type what the hygrometer shows.";
        }
        Optional<DriftQuestion.Air> usual = now.map(air -> question.airUsual(climates));
        return new DriftPage(new View(
                question,
                problem,
                rooms,
                name,
                Address.of("/rooms/", question.room()),
                now,
                usual,
                now.isPresent() ? shots(question.room(), now.get(), usual.orElseThrow()) : List.of()));
    }

    private List<RoomChoice> rooms(String chosen) {
        List<RoomChoice> rooms = new ArrayList<>();
        rooms.add(new RoomChoice("", "a room that is not in the pool", chosen.isEmpty()));
        climates.rooms(MOST_ROOMS)
                .forEach(room -> rooms.add(
                        new RoomChoice(room.key(), label(room), room.key().equals(chosen))));
        return rooms;
    }

    /** Two rooms may have one name: the key tells them apart. */
    private static String label(RoomClimates.Named room) {
        return room.name().equals(room.key()) ? room.key() : room.name() + " (" + room.key() + ")";
    }

    private List<ShotDrift> shots(String room, DriftQuestion.Air now, DriftQuestion.Air usual) {
        RunCaller caller = callers.current();
        return climates.shots(room, MOST_SHOTS).stream()
                .map(shot -> drift.of(new DriftCase(shot, room, now, usual, caller)))
                .toList();
    }
}
