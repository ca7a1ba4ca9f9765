package org.tableweather.analyzers.standard.catalogue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Block;
import org.tableweather.analyzers.standard.catalogue.SessionMoments.Part;
import org.tableweather.analyzers.standard.statistics.Moments;
import org.tableweather.analyzers.standard.statistics.RoomSessions;

/** The trials that a question can use, and the count of those that it cannot. */
final class HumidityPool {

    private static final Comparator<SessionSummary<SessionMoments>> ORDER = Comparator.comparing(
                    (SessionSummary<SessionMoments> session) -> session.roomKey())
            .thenComparing(SessionSummary::sessionKey)
            .thenComparing(SessionSummary::digest);

    /** Shots with usable trials, by the number of these. */
    final SortedMap<String, Long> usableByShot = new TreeMap<>();
    /** All shots. */
    final SortedMap<String, Long> trialsByShot = new TreeMap<>();
    /** The shot that is answered for; empty when there is none. */
    final String shot;
    /** Rooms in the order of their keys; columns: covariates, then the response. */
    final List<RoomSessions> rooms = new ArrayList<>();

    final long usedSessions;
    final long usedTrials;
    final long inventedSessions;
    /** Trials of the shot without the response. */
    long withoutResponse;
    /** Trials of the shot with the response, but without humidity or temperature. */
    long withoutClimate;
    /** Trials of the shot with response and climate, but without a covariate that was asked for. */
    long withoutCovariate;

    private final HumidityQuestion question;
    private final int[] needed;

    HumidityPool(List<SessionSummary<SessionMoments>> sessions, HumidityQuestion question) {
        this.question = question;
        needed = columnBits(question);
        List<SessionSummary<SessionMoments>> ordered =
                sessions.stream().sorted(ORDER).toList();
        ordered.forEach(session -> session.summary().parts().forEach(this::count));
        shot = question.shot().orElseGet(this::mostUsable);
        Map<String, List<Moments>> byRoom = new LinkedHashMap<>();
        long invented = 0;
        for (SessionSummary<SessionMoments> session : ordered) {
            Moments used = used(session.summary());
            if (used.n() > 0) {
                byRoom.computeIfAbsent(session.roomKey(), room -> new ArrayList<>())
                        .add(used);
                invented += session.invented() ? 1 : 0;
            }
        }
        byRoom.forEach((room, moments) -> rooms.add(new RoomSessions(room, moments)));
        usedSessions = byRoom.values().stream().mapToLong(List::size).sum();
        usedTrials = rooms.stream().mapToLong(RoomSessions::trials).sum();
        inventedSessions = invented;
    }

    private static int[] columnBits(HumidityQuestion question) {
        List<Integer> bits = new ArrayList<>();
        question.covariates().forEach(covariate -> bits.add(covariate.measure.bit()));
        bits.add(question.response().measure.bit());
        return bits.stream().mapToInt(Integer::intValue).toArray();
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
        return (block.measured() & question.neededBits()) == question.neededBits();
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

    private Moments used(SessionMoments summary) {
        List<Moments> usable = new ArrayList<>();
        usable.add(Moments.none(needed.length));
        summary.parts().stream()
                .filter(part -> part.shot().equals(shot) || shot.isEmpty())
                .flatMap(part -> part.blocks().stream())
                .forEach(block -> {
                    if (isUsable(block)) {
                        usable.add(block.moments().select(positions(block.measured())));
                    } else {
                        countUnusable(block);
                    }
                });
        return Moments.merged(usable);
    }

    private void countUnusable(Block block) {
        long n = block.moments().n();
        int climate = HumidityQuestion.climateBits();
        if ((block.measured() & question.response().measure.bit()) == 0) {
            withoutResponse += n;
        } else if ((block.measured() & climate) != climate) {
            withoutClimate += n;
        } else {
            withoutCovariate += n;
        }
    }

    /** Where the needed columns stand among the measured ones. */
    private int[] positions(int measured) {
        int[] positions = new int[needed.length];
        for (int i = 0; i < needed.length; i++) {
            positions[i] = Integer.bitCount(measured & (needed[i] - 1));
        }
        return positions;
    }

    /** All used trials as one. */
    Moments total() {
        List<Moments> all = new ArrayList<>();
        rooms.forEach(room -> all.addAll(room.sessions()));
        return Moments.merged(all);
    }

    /** Lowest session mean of a column. */
    double lowest(int column) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .mapToDouble(session -> session.mean(column))
                .min()
                .orElse(Double.NaN);
    }

    /** Highest session mean of a column. */
    double highest(int column) {
        return rooms.stream()
                .flatMap(room -> room.sessions().stream())
                .mapToDouble(session -> session.mean(column))
                .max()
                .orElse(Double.NaN);
    }
}
