package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.catalogue.SessionOrder;
import org.tableweather.analyzers.standard.catalogue.ShotCounts;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/** The trials that a question about one outcome can use, and the count of those that it cannot. */
final class KindPool {

    final Outcome outcome;
    /** Trials of the kind by shot. */
    final ShotCounts shots = new ShotCounts();
    /** The shot that is answered for; empty when there is none. */
    final String shot;
    /** Rooms in the order of their keys; columns: covariates, then the outcome. */
    final List<RoomSessions> rooms = new ArrayList<>();
    /** How the used sessions were shot. */
    final List<GuardedSession> guarded = new ArrayList<>();

    final long usedSessions;
    final long usedTrials;
    long inventedSessions;
    /** Trials of the shot without the outcome. */
    long withoutOutcome;
    /** Trials of the shot with the outcome, but without humidity or temperature. */
    long withoutClimate;
    /** Trials of the shot with outcome and climate, but without a covariate that was asked for. */
    long withoutCovariate;

    private final KindQuestion question;
    private final int[] needed;
    private final int neededBits;
    private final int climateBits;

    /** The question's outcome must be chosen. */
    KindPool(List<SessionSummary<KindSummary>> sessions, KindQuestion question) {
        this.question = question;
        outcome = question.outcome().orElseThrow();
        needed = needed();
        neededBits = IntStream.of(needed).sum();
        climateBits = question.climate().stream().mapToInt(this::bit).sum();
        List<SessionSummary<KindSummary>> ordered = SessionOrder.of(sessions);
        ordered.forEach(session -> session.summary().parts().forEach(this::count));
        shot = question.shot().orElseGet(shots::mostUsable);
        Map<String, List<Moments>> byRoom = new LinkedHashMap<>();
        ordered.forEach(session -> take(session, byRoom));
        byRoom.forEach((room, moments) -> rooms.add(new RoomSessions(room, moments)));
        usedSessions = guarded.size();
        usedTrials = rooms.stream().mapToLong(RoomSessions::trials).sum();
    }

    /** Bits of the columns, in order. */
    private int[] needed() {
        return IntStream.concat(
                        question.covariates().stream().mapToInt(this::bit),
                        IntStream.of(1 << question.definition().column(outcome)))
                .toArray();
    }

    private int bit(KindCovariate covariate) {
        return 1 << question.definition().column(covariate);
    }

    private void count(Part part) {
        for (Block block : part.blocks()) {
            long n = block.moments().n();
            shots.add(part.shot(), n, block.measures(neededBits) ? n : 0);
        }
    }

    private void take(SessionSummary<KindSummary> session, Map<String, List<Moments>> byRoom) {
        List<Moments> usable = new ArrayList<>();
        usable.add(Moments.none(needed.length));
        session.summary().parts().stream()
                .filter(part -> part.shot().equals(shot) || shot.isEmpty())
                .flatMap(part -> part.blocks().stream())
                .forEach(block -> {
                    if (block.measures(neededBits)) {
                        usable.add(block.select(needed));
                    } else {
                        countUnusable(block);
                    }
                });
        Moments merged = Moments.merged(usable);
        if (merged.n() > 0) {
            byRoom.computeIfAbsent(session.roomKey(), room -> new ArrayList<>()).add(merged);
            guarded.add(new GuardedSession(
                    session.roomKey(), session.sessionKey(), session.summary().protocol()));
            inventedSessions += session.invented() ? 1 : 0;
        }
    }

    private void countUnusable(Block block) {
        long n = block.moments().n();
        if (!block.measures(1 << question.definition().column(outcome))) {
            withoutOutcome += n;
        } else if (!block.measures(climateBits)) {
            withoutClimate += n;
        } else {
            withoutCovariate += n;
        }
    }

    /** All used trials as one. */
    Moments total() {
        List<Moments> all = new ArrayList<>();
        rooms.forEach(room -> all.addAll(room.sessions()));
        return Moments.merged(all);
    }

    /** Lowest session mean of relative humidity, %. */
    double lowestPct() {
        return 50 + 10 * sessionMeans(0).min().orElse(Double.NaN);
    }

    /** Highest session mean of relative humidity, %. */
    double highestPct() {
        return 50 + 10 * sessionMeans(0).max().orElse(Double.NaN);
    }

    /** Lowest session mean of air temperature, °C. */
    double coldestC() {
        return 21 + 5 * sessionMeans(question.climate().size() - 1).min().orElse(Double.NaN);
    }

    /** Highest session mean of air temperature, °C. */
    double warmestC() {
        return 21 + 5 * sessionMeans(question.climate().size() - 1).max().orElse(Double.NaN);
    }

    private DoubleStream sessionMeans(int column) {
        return rooms.stream().flatMap(room -> room.sessions().stream()).mapToDouble(session -> session.mean(column));
    }
}
