package org.tableweather.server.catalogue;

import jakarta.ws.rs.core.MultivaluedMap;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.tableweather.schema.record.Kind;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.Refusal;

/**
 * Which part of the catalogue is asked for.
 *
 * @param shot id of the shot
 * @param kind what is tested
 * @param room room key
 * @param from not before this time
 * @param to before this time
 * @param tempFrom at least, °C
 * @param tempTo at most, °C
 * @param rhFrom at least, %
 * @param rhTo at most, %
 */
record CatalogueFilter(
        Optional<String> shot,
        Optional<Kind> kind,
        Optional<String> room,
        Optional<OffsetDateTime> from,
        Optional<OffsetDateTime> to,
        OptionalDouble tempFrom,
        OptionalDouble tempTo,
        OptionalDouble rhFrom,
        OptionalDouble rhTo) {

    /** The parameters that every filtered list takes. */
    static final String[] PARAMETERS = {
        "shot", "kind", "room", "from", "to", "tempFrom", "tempTo", "rhFrom", "rhTo", "after", "limit", "format"
    };

    /**
     * The filter of a query.
     *
     * @throws Refusal for a value that cannot be read
     */
    static CatalogueFilter of(MultivaluedMap<String, String> query) {
        return new CatalogueFilter(
                Optional.ofNullable(query.getFirst("shot")),
                kind(query.getFirst("kind")),
                Optional.ofNullable(query.getFirst("room")),
                time("from", query.getFirst("from")),
                time("to", query.getFirst("to")),
                number("tempFrom", query.getFirst("tempFrom")),
                number("tempTo", query.getFirst("tempTo")),
                number("rhFrom", query.getFirst("rhFrom")),
                number("rhTo", query.getFirst("rhTo")));
    }

    private static Optional<Kind> kind(String text) {
        if (text == null) {
            return Optional.empty();
        }
        Optional<Kind> kind = Kind.of(text);
        if (kind.isEmpty()) {
            String all = Arrays.stream(Kind.values()).map(Kind::schemaName).collect(Collectors.joining(", "));
            throw bad("kind", text, "is not one of " + all + ": choose one of them");
        }
        return kind;
    }

    private static Optional<OffsetDateTime> time(String name, String text) {
        if (text == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(
                    text.length() == 10
                            ? LocalDate.parse(text).atStartOfDay().atOffset(ZoneOffset.UTC)
                            : OffsetDateTime.parse(text));
        } catch (DateTimeException e) {
            throw bad(name, text, "is no time: write 2026-01-12, or 2026-01-12T18:05:00Z");
        }
    }

    private static OptionalDouble number(String name, String text) {
        if (text == null) {
            return OptionalDouble.empty();
        }
        try {
            double number = Double.parseDouble(text);
            if (Double.isFinite(number)) {
                return OptionalDouble.of(number);
            }
        } catch (NumberFormatException e) {
            // told below, with the name
        }
        throw bad(name, text, "is no number: write it with a decimal point, as in 47.5");
    }

    private static Refusal bad(String name, String value, String rest) {
        return new Refusal(ErrorCode.BAD_REQUEST, name + " = " + value + " " + rest);
    }

    /** What a session must satisfy to hold any such trial; {@code s} is the session, {@code r} its room. */
    Where sessions() {
        Where where = new Where().and("s.published");
        room.ifPresent(key -> where.and("r.key = ?", key));
        from.ifPresent(time -> where.and("s.ended_at >= ?", time));
        to.ifPresent(time -> where.and("s.started_at < ?", time));
        tempFrom.ifPresent(bound -> where.and("s.temp_max_c >= ?", bound));
        tempTo.ifPresent(bound -> where.and("s.temp_min_c <= ?", bound));
        rhFrom.ifPresent(bound -> where.and("s.rh_max_pct >= ?", bound));
        rhTo.ifPresent(bound -> where.and("s.rh_min_pct <= ?", bound));
        addShot(where);
        return where;
    }

    private void addShot(Where where) {
        String exists = "EXISTS (SELECT FROM session_shot x WHERE x.session_id = s.id";
        if (shot.isPresent() && kind.isPresent()) {
            where.and(
                    exists + " AND x.shot = ? AND x.kind = ?)",
                    shot.get(),
                    kind.get().schemaName());
        } else {
            shot.ifPresent(id -> where.and(exists + " AND x.shot = ?)", id));
            kind.ifPresent(is -> where.and(exists + " AND x.kind = ?)", is.schemaName()));
        }
    }

    /**
     * What a trial must satisfy beside; {@code t} is the trial. One without a time of its own has its session's.
     *
     * @param sessionsInTime sessions whose own start lies in the span
     */
    Where trials(Integer[] sessionsInTime) {
        Where where = new Where();
        shot.ifPresent(id -> where.and("t.shot = ?", id));
        kind.ifPresent(is -> where.and("t.kind = ?", is.schemaName()));
        String orSession = " OR t.started_at IS NULL AND t.session_id = ANY (?)";
        from.ifPresent(time -> where.and("t.started_at >= ?" + orSession, time, sessionsInTime));
        to.ifPresent(time -> where.and("t.started_at < ?" + orSession, time, sessionsInTime));
        tempFrom.ifPresent(bound -> where.and("t.climate_temp_c >= ?", bound));
        tempTo.ifPresent(bound -> where.and("t.climate_temp_c <= ?", bound));
        rhFrom.ifPresent(bound -> where.and("t.climate_rh_pct >= ?", bound));
        rhTo.ifPresent(bound -> where.and("t.climate_rh_pct <= ?", bound));
        return where;
    }

    /** Whether a session's own start lies in the span. */
    boolean isInTime(OffsetDateTime start) {
        return start != null
                && from.map(bound -> !start.isBefore(bound)).orElse(true)
                && to.map(start::isBefore).orElse(true);
    }
}
