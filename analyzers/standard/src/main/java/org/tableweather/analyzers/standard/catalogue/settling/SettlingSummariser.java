package org.tableweather.analyzers.standard.catalogue.settling;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.catalogue.settling.SettlingSummary.Minute;
import org.tableweather.analyzers.standard.catalogue.settling.SettlingSummary.Part;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.MomentsBuilder;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's attempts by shot, outcome and minute. */
final class SettlingSummariser {

    private static final double SECONDS_PER_HOUR = 3600;

    private final SortedMap<String, SortedMap<SettlingOutcome, SortedMap<Long, MomentsBuilder>>> shots =
            new TreeMap<>();
    private long timed;

    /** The summary of trials in any order: equal trials give equal bits. */
    static SettlingSummary of(SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = CorrectedClimate.of(session).ordered(trials);
        SettlingSummariser summariser = new SettlingSummariser();
        Optional<Instant> from = session.session().settledFrom().map(OffsetDateTime::toInstant);
        from.ifPresent(instant -> ordered.forEach(trial -> summariser.add(trial, instant)));
        return new SettlingSummary(
                session.table().id(),
                from.map(Instant::getEpochSecond).orElse(0L),
                summariser.parts(),
                ordered.size(),
                summariser.timed,
                new SessionProtocolBuilder(outcomes()).ofOrdered(session.session(), ordered));
    }

    private static Map<String, ToDoubleFunction<Trial>> outcomes() {
        Map<String, ToDoubleFunction<Trial>> outcomes = new HashMap<>();
        for (SettlingOutcome outcome : SettlingOutcome.values()) {
            outcomes.put(outcome.parameter, outcome::of);
        }
        return outcomes;
    }

    private void add(Trial trial, Instant from) {
        if (trial.startedAt().filter(time -> !time.isBefore(from)).isEmpty()) {
            return;
        }
        timed++;
        Duration since = Duration.between(from, trial.startedAt().get());
        double hours = since.toMillis() / (1000 * SECONDS_PER_HOUR);
        for (SettlingOutcome outcome : SettlingOutcome.values()) {
            double value = outcome.of(trial);
            if (!Double.isNaN(value)) {
                shots.computeIfAbsent(trial.shot(), shot -> new TreeMap<>())
                        .computeIfAbsent(outcome, name -> new TreeMap<>())
                        .computeIfAbsent(since.toMinutes(), minute -> new MomentsBuilder(2))
                        .add(hours, value);
            }
        }
    }

    private List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        shots.forEach((shot, outcomes) -> outcomes.forEach((outcome, minutes) -> parts.add(new Part(
                shot,
                outcome.parameter,
                minutes.values().stream()
                        .map(MomentsBuilder::build)
                        .map(SettlingSummariser::minute)
                        .toList()))));
        return parts;
    }

    private static Minute minute(Moments moments) {
        return new Minute(moments.mean(0), moments.n(), moments.mean(1), moments.cross(1, 1));
    }
}
