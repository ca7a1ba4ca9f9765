package org.tableweather.server.catalogue;

import jakarta.ws.rs.core.MultivaluedMap;
import java.time.OffsetDateTime;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.tableweather.schema.record.Kind;
import org.tableweather.server.web.Refusal;

/**
 * Which part of the catalogue is asked for.
 *
 * @param shot id of the shot
 * @param kind what is tested
 * @param room room key
 * @param country of the room
 * @param contributor ORCID iD, or else name
 * @param from not before this time
 * @param to before this time
 * @param severityFrom the worst finding of the contribution's checks is at least this
 * @param severityTo the worst finding is at most this
 * @param ranges of climate, table and cloth
 */
record CatalogueFilter(
        Optional<String> shot,
        Optional<Kind> kind,
        Optional<String> room,
        Optional<String> country,
        Optional<String> contributor,
        Optional<OffsetDateTime> from,
        Optional<OffsetDateTime> to,
        OptionalInt severityFrom,
        OptionalInt severityTo,
        Map<FilterRange, Bounds> ranges) {

    /** The filters alone. */
    static final String[] FILTERS = Stream.concat(
                    Stream.of(
                            "shot",
                            "kind",
                            "room",
                            "country",
                            "contributor",
                            "from",
                            "to",
                            "severityFrom",
                            "severityTo"),
                    FilterRange.parameters())
            .toArray(String[]::new);

    /** The filters, and a saved query that holds some of them. */
    static final String[] FILTERS_AND_QUERY =
            Stream.concat(Stream.of(FILTERS), Stream.of("query")).toArray(String[]::new);

    /** The parameters that every filtered list takes. */
    static final String[] PARAMETERS = Stream.concat(
                    Stream.of(FILTERS_AND_QUERY), Stream.of("after", "limit", "format"))
            .toArray(String[]::new);

    /**
     * The filter of a query.
     *
     * @throws Refusal for a value that cannot be read
     */
    static CatalogueFilter of(MultivaluedMap<String, String> query) {
        Map<FilterRange, Bounds> ranges = new EnumMap<>(FilterRange.class);
        for (FilterRange range : FilterRange.values()) {
            Bounds bounds = FilterValues.bounds(range, query.getFirst(range.from()), query.getFirst(range.to()));
            if (!bounds.isOpen()) {
                ranges.put(range, bounds);
            }
        }
        return new CatalogueFilter(
                Optional.ofNullable(query.getFirst("shot")),
                FilterValues.kind(query.getFirst("kind")),
                Optional.ofNullable(query.getFirst("room")),
                FilterValues.country(query.getFirst("country")),
                Optional.ofNullable(query.getFirst("contributor")),
                FilterValues.time("from", query.getFirst("from")),
                FilterValues.time("to", query.getFirst("to")),
                FilterValues.severity("severityFrom", query.getFirst("severityFrom")),
                FilterValues.severity("severityTo", query.getFirst("severityTo")),
                ranges);
    }

    /** What a session must satisfy to hold any such trial; {@code s} is the session, {@code r} its room. */
    Where sessions() {
        Where where = new Where().and("s.published");
        room.ifPresent(key -> where.and("r.key = ?", key));
        country.ifPresent(code -> where.and("r.country = ?", code));
        contributor.ifPresent(key -> where.and("r.contributor = ?", key));
        from.ifPresent(time -> where.and("s.ended_at >= ?", time));
        to.ifPresent(time -> where.and("s.started_at < ?", time));
        severityFrom.ifPresent(rank -> where.and(worstFinding(">="), rank));
        severityTo.ifPresent(rank -> where.and(worstFinding("<="), rank));
        ranges.forEach((range, bounds) -> range.touching(where, bounds));
        shots("x")
                .ifPresent(x -> where.and("EXISTS (SELECT FROM session_shot x WHERE x.session_id = s.id AND ", x, ")"));
        return where;
    }

    private static String worstFinding(String compared) {
        return "s.contribution_id IN (SELECT c.id FROM contribution c WHERE c.worst_finding " + compared + " ?)";
    }

    /** What shot and kind demand of a row under this alias; empty when neither is asked for. */
    Optional<Where> shots(String alias) {
        Where where = new Where();
        shot.ifPresent(id -> where.and(alias + ".shot = ?", id));
        kind.ifPresent(is -> where.and(alias + ".kind = ?", is.schemaName()));
        return where.isEmpty() ? Optional.empty() : Optional.of(where);
    }

    /** What makes every trial of a session pass that has the right shot and kind; without conditions when all do. */
    Where whole() {
        Where where = new Where();
        from.ifPresent(time -> where.and("s.started_at >= ?", time));
        to.ifPresent(time -> where.and("s.ended_at < ?", time));
        ranges.forEach((range, bounds) -> range.covering(where, bounds));
        return where;
    }

    /**
     * What a trial must satisfy as far as columns tell; {@code t} is the trial. One without a time of its own has its session's.
     *
     * @param sessionsInTime sessions whose own start lies in the span
     */
    Where trials(Integer[] sessionsInTime) {
        Where where = new Where();
        String orSession = " OR t.started_at IS NULL AND t.session_id = ANY (?)";
        from.ifPresent(time -> where.and("t.started_at >= ?" + orSession, time, sessionsInTime));
        to.ifPresent(time -> where.and("t.started_at < ?" + orSession, time, sessionsInTime));
        ranges.forEach((range, bounds) -> range.ofTrial(where, bounds));
        return where;
    }

    /** Whether a measure is bounded that no column holds. */
    boolean needsMeasures() {
        return ranges.keySet().stream().anyMatch(range -> range.measure().isPresent());
    }

    /** Whether a session's own start lies in the span. */
    boolean isInTime(OffsetDateTime start) {
        return start != null
                && from.map(bound -> !start.isBefore(bound)).orElse(true)
                && to.map(start::isBefore).orElse(true);
    }
}
