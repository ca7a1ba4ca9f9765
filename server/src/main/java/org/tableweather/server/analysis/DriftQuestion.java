package org.tableweather.server.analysis;

import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import java.util.Optional;
import org.tableweather.server.catalogue.RoomClimates;
import org.tableweather.server.web.Field;
import org.tableweather.server.web.Words;

/**
 * What somebody asks of today: which room, its air now, and what to hold it against.
 *
 * @param room key of the room; empty for one that is not in the pool
 * @param now temperature and humidity as typed
 * @param usual what the room is usually at, as typed
 * @param latest whether the last climate known of the room is taken for now
 */
record DriftQuestion(String room, List<Field> now, List<Field> usual, boolean latest) {
    static final String[] PARAMETERS = {"room", "tempC", "rhPct", "usualTempC", "usualRhPct", "latest"};

    /** Where the pooled model has its origin: what a room is held against when nothing is known of it. */
    static final double ORIGIN_RH_PCT = 50;

    static final double ORIGIN_TEMP_C = 21;

    private static final double LOWEST_C = -10;
    private static final double HIGHEST_C = 50;

    /**
     * A climate.
     *
     * @param tempC °C
     * @param rhPct %
     * @param from where it is known from, in words
     */
    record Air(double tempC, double rhPct, String from) {
        public String words() {
            return Words.number(tempC, 1) + " °C and " + Words.number(rhPct, 1) + " %";
        }
    }

    static DriftQuestion of(MultivaluedMap<String, String> query) {
        String room = Optional.ofNullable(query.getFirst("room")).orElse("").strip();
        return new DriftQuestion(
                room,
                List.of(
                        Field.of(query, "tempC", "Temperature now, °C", LOWEST_C, HIGHEST_C),
                        Field.of(query, "rhPct", "Relative humidity now, %", 1, 100)),
                List.of(
                        Field.of(query, "usualTempC", "Usual temperature, °C", LOWEST_C, HIGHEST_C),
                        Field.of(query, "usualRhPct", "Usual relative humidity, %", 1, 100)),
                "yes".equals(query.getFirst("latest")));
    }

    /** Whether something was asked at all. */
    boolean isAsked() {
        return latest || now.stream().anyMatch(field -> !field.typed().isEmpty());
    }

    /** Whether the climate that it is held against was typed. */
    public boolean isUsualTyped() {
        return usual.stream().anyMatch(field -> !field.typed().isEmpty());
    }

    /** What is to be mended before it can be answered, in words; empty when nothing. */
    String problem() {
        if (now.stream().anyMatch(Field::isBad) || usual.stream().anyMatch(Field::isBad)) {
            return "Mend what is marked above.";
        }
        boolean half = now.get(0).typed().isEmpty() != now.get(1).typed().isEmpty();
        if (isAsked() && !latest && half) {
            return "Type both temperature and humidity, as the hygrometer shows them at the table.";
        }
        return latest && room.isEmpty() ? "Choose a room: the latest climate is known of rooms in the pool alone." : "";
    }

    /** The air now. */
    Optional<Air> airNow(RoomClimates climates) {
        if (latest) {
            return climates.latest(room)
                    .map(last -> new Air(
                            last.tempC(),
                            last.rhPct(),
                            "the last attempt of session " + last.session()
                                    + last.at()
                                            .map(at -> " at " + Words.minute(Optional.of(at)) + " universal time")
                                            .orElse("")));
        }
        return now.get(0).value().isPresent() && now.get(1).value().isPresent()
                ? Optional.of(new Air(
                        now.get(0).value().getAsDouble(), now.get(1).value().getAsDouble(), "as you typed"))
                : Optional.empty();
    }

    /** What it is held against: what was typed, else what the room's sessions are at, else the origin of the model. */
    Air airUsual(RoomClimates climates) {
        Optional<RoomClimates.Usual> known = room.isEmpty() ? Optional.empty() : climates.usual(room);
        Air otherwise = known.map(usual -> new Air(
                        usual.tempC(),
                        usual.rhPct(),
                        "the mean over " + Words.counted(usual.sessions(), "session") + " of this room"))
                .orElse(new Air(
                        ORIGIN_TEMP_C,
                        ORIGIN_RH_PCT,
                        "a common climate, for nothing is known of the room: type its own"));
        return !isUsualTyped()
                ? otherwise
                : new Air(
                        usual.get(0).value().orElse(otherwise.tempC()),
                        usual.get(1).value().orElse(otherwise.rhPct()),
                        "as you typed");
    }
}
