package org.tableweather.analyzers.standard.catalogue.settling;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.SessionOrder;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.settling.SettlingSummary.Part;
import org.tableweather.analyzers.standard.statistics.decay.DecayPoint;

/** The steps of the climate after which a shot's outcome was followed. */
final class SettlingPool {

    final SettlingOutcome outcome;
    /** The shot that is answered for; empty when there is none. */
    final String shot;
    /** Steps that can be used, in the order of room, table and time. */
    final List<ClimateStep> steps;

    final List<GuardedSession> guarded = new ArrayList<>();
    final SortedSet<String> rooms = new TreeSet<>();
    final long sessions;
    final long trials;
    long timed;
    long invented;
    /** Steps with the outcome at fewer than three times. */
    final long shortSteps;

    private final ShotCounts timedShots = new ShotCounts();
    private final SortedMap<String, List<DecayPoint>> byStep = new TreeMap<>();

    SettlingPool(List<SessionSummary<SettlingSummary>> summaries, Optional<String> shot, SettlingOutcome outcome) {
        this.outcome = outcome;
        List<SessionSummary<SettlingSummary>> ordered = SessionOrder.of(summaries);
        ordered.forEach(session -> session.summary().parts().stream()
                .filter(part -> part.response().equals(outcome.parameter))
                .forEach(this::count));
        this.shot = shot.orElseGet(timedShots::mostUsable);
        ordered.forEach(this::take);
        List<ClimateStep> all = new ArrayList<>();
        byStep.forEach((name, points) -> all.add(new ClimateStep(name, sorted(points))));
        steps = all.stream().filter(ClimateStep::isUsable).toList();
        shortSteps = all.size() - steps.size();
        sessions = summaries.size();
        trials = summaries.stream().mapToLong(SessionSummary::trials).sum();
    }

    private static List<DecayPoint> sorted(List<DecayPoint> points) {
        return points.stream()
                .sorted(Comparator.comparingDouble(DecayPoint::hours))
                .toList();
    }

    private void count(Part part) {
        long n = part.minutes().stream().mapToLong(SettlingSummary.Minute::n).sum();
        timedShots.add(part.shot(), n, n);
    }

    private void take(SessionSummary<SettlingSummary> session) {
        SettlingSummary summary = session.summary();
        timed += summary.timed();
        invented += session.invented() ? 1 : 0;
        summary.parts().stream()
                .filter(part -> part.shot().equals(shot) && part.response().equals(outcome.parameter))
                .forEach(part -> {
                    rooms.add(session.roomKey());
                    guarded.add(new GuardedSession(session.roomKey(), session.sessionKey(), summary.protocol()));
                    String name = session.roomKey() + ", " + summary.table() + ", "
                            + Instant.ofEpochSecond(summary.settledFromS());
                    List<DecayPoint> points = byStep.computeIfAbsent(name, step -> new ArrayList<>());
                    part.minutes()
                            .forEach(minute -> points.add(
                                    new DecayPoint(minute.hours(), minute.n(), minute.mean(), minute.squares())));
                });
    }

    /** Attempts in the steps that can be used. */
    long used() {
        return steps.stream().mapToLong(ClimateStep::trials).sum();
    }
}
