package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.kind.KindSummary.Block;
import org.tableweather.analyzers.standard.catalogue.kind.KindSummary.Part;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/** The trials that a question about one outcome can use, and the count of those that it cannot. */
final class KindPool {

    private static final Comparator<SessionSummary<KindSummary>> ORDER = Comparator.comparing(
                    (SessionSummary<KindSummary> session) -> session.roomKey())
            .thenComparing(SessionSummary::sessionKey)
            .thenComparing(SessionSummary::digest);

    final Outcome outcome;
    /** Shots with usable trials, by the number of these. */
    final SortedMap<String, Long> usableByShot = new TreeMap<>();
    /** All shots of the kind. */
    final SortedMap<String, Long> trialsByShot = new TreeMap<>();
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
    private final int[] columns;
    private final int neededBits;
    private final int climateBits;

    /** The question's outcome must be chosen. */
    KindPool(List<SessionSummary<KindSummary>> sessions, KindQuestion question) {
        this.question = question;
        outcome = question.outcome().orElseThrow();
        columns = columns();
        neededBits = bits(columns);
        climateBits = bits(question.climate().stream()
                .mapToInt(question.definition()::column)
                .toArray());
        List<SessionSummary<KindSummary>> ordered =
                sessions.stream().sorted(ORDER).toList();
        ordered.forEach(session -> session.summary().parts().forEach(this::count));
        shot = question.shot().orElseGet(this::mostUsable);
        Map<String, List<Moments>> byRoom = new LinkedHashMap<>();
        ordered.forEach(session -> take(session, byRoom));
        byRoom.forEach((room, moments) -> rooms.add(new RoomSessions(room, moments)));
        usedSessions = guarded.size();
        usedTrials = rooms.stream().mapToLong(RoomSessions::trials).sum();
    }

    private int[] columns() {
        List<Integer> needed = new ArrayList<>();
        question.covariates()
                .forEach(covariate -> needed.add(question.definition().column(covariate)));
        needed.add(question.definition().column(outcome));
        return needed.stream().mapToInt(Integer::intValue).toArray();
    }

    private static int bits(int[] columns) {
        int bits = 0;
        for (int column : columns) {
            bits |= 1 << column;
        }
        return bits;
    }

    private void count(Part part) {
        for (Block block : part.blocks()) {
            long n = block.moments().n();
            trialsByShot.merge(part.shot(), n, Long::sum);
            if (isUsable(block)) {
                usableByShot.merge(part.shot(), n, Long::sum);
            }
        }
    }

    private boolean isUsable(Block block) {
        return (block.measured() & neededBits) == neededBits;
    }

    private String mostUsable() {
        String best = "";
        long most = 0;
        for (Map.Entry<String, Long> entry : usableByShot.entrySet()) {
            if (entry.getValue() > most) {
                best = entry.getKey();
                most = entry.getValue();
            }
        }
        return best;
    }

    private void take(SessionSummary<KindSummary> session, Map<String, List<Moments>> byRoom) {
        List<Moments> usable = new ArrayList<>();
        usable.add(Moments.none(columns.length));
        session.summary().parts().stream()
                .filter(part -> part.shot().equals(shot) || shot.isEmpty())
                .flatMap(part -> part.blocks().stream())
                .forEach(block -> {
                    if (isUsable(block)) {
                        usable.add(block.moments().select(positions(block.measured())));
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
        if ((block.measured() & 1 << question.definition().column(outcome)) == 0) {
            withoutOutcome += n;
        } else if ((block.measured() & climateBits) != climateBits) {
            withoutClimate += n;
        } else {
            withoutCovariate += n;
        }
    }

    /** Where the needed columns stand among the measured ones. */
    private int[] positions(int measured) {
        int[] positions = new int[columns.length];
        for (int i = 0; i < columns.length; i++) {
            positions[i] = Integer.bitCount(measured & ((1 << columns[i]) - 1));
        }
        return positions;
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
