package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.SummarySource.SessionSummary;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.analyzers.standard.catalogue.guard.GuardedSession;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Cell;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Column;
import org.tableweather.analyzers.standard.catalogue.rail.RailSummary.Measured;

/** The pairs that a question can use, and the count of those that it cannot. */
final class RailPool {

    private static final Comparator<SessionSummary<RailSummary>> ORDER = Comparator.comparing(
                    (SessionSummary<RailSummary> session) -> session.roomKey())
            .thenComparing(SessionSummary::sessionKey)
            .thenComparing(SessionSummary::digest);

    /**
     * Pairs under one condition.
     *
     * @param room key of the room
     * @param session key of the session
     * @param cell the pairs
     * @param noseSine of the table
     * @param x humidity in the measure's steps from its origin
     * @param t temperature, (T − 21 °C)/5 K
     */
    record Used(String room, String session, Cell cell, double noseSine, double x, double t) {

        double rhPct() {
            return cell.mean(Column.RH_PCT);
        }

        long pairs() {
            return cell.moments().n();
        }

        boolean withRatio() {
            return cell.measured() == Measured.SPEEDS;
        }

        boolean withSpeed() {
            return cell.measured() != Measured.ANGLES;
        }
    }

    final RailQuestion question;
    final List<Used> used = new ArrayList<>();
    final List<GuardedSession> guarded = new ArrayList<>();
    /** All pairs by shot. */
    final SortedMap<String, Long> pairsByShot = new TreeMap<>();

    final Set<String> rooms = new LinkedHashSet<>();
    final Set<String> sessions = new LinkedHashSet<>();
    SessionTraits typical = SessionTraits.UNKNOWN;
    long trials;
    long pairs;
    long withoutPair;
    long withoutClimate;
    long withoutMeasure;
    long withSideSpin;
    long inventedSessions;
    long noseAssumed;

    RailPool(List<SessionSummary<RailSummary>> summaries, RailQuestion question) {
        this.question = question;
        summaries.stream().sorted(ORDER).forEach(this::take);
    }

    private void take(SessionSummary<RailSummary> session) {
        RailSummary summary = session.summary();
        trials += summary.trials();
        withoutPair += summary.withoutPair();
        withoutClimate += summary.withoutClimate();
        withSideSpin += summary.withSideSpin();
        boolean taken = false;
        for (Cell cell : summary.cells()) {
            pairsByShot.merge(cell.shot(), cell.moments().n(), Long::sum);
            if (question.shot().isEmpty() || question.shot().get().equals(cell.shot())) {
                taken |= take(session, summary, cell);
            }
        }
        if (taken) {
            typical = sessions.isEmpty() ? summary.traits() : typical;
            rooms.add(session.roomKey());
            sessions.add(session.sessionKey());
            inventedSessions += session.invented() ? 1 : 0;
            noseAssumed += summary.noseStated() ? 0 : 1;
            guarded.add(new GuardedSession(session.roomKey(), session.sessionKey(), summary.protocol()));
        }
    }

    private boolean take(SessionSummary<RailSummary> session, RailSummary summary, Cell cell) {
        double tempC = cell.mean(Column.TEMP_C);
        double x = question.measure().x(cell.mean(Column.RH_PCT), tempC, summary.traits());
        if (Double.isNaN(x)) {
            withoutMeasure += cell.moments().n();
            return false;
        }
        pairs += cell.moments().n();
        used.add(new Used(session.roomKey(), session.sessionKey(), cell, summary.noseSine(), x, (tempC - 21) / 5));
        return true;
    }

    /** The shot with the most pairs. */
    String mainShot() {
        Map<String, Long> counts = new LinkedHashMap<>();
        used.forEach(each -> counts.merge(each.cell().shot(), each.pairs(), Long::sum));
        String best = "";
        for (Map.Entry<String, Long> entry : counts.entrySet()) {
            best = best.isEmpty() || entry.getValue() > counts.get(best) ? entry.getKey() : best;
        }
        return best;
    }

    double lowestPct() {
        return used.stream().mapToDouble(Used::rhPct).min().orElse(Double.NaN);
    }

    double highestPct() {
        return used.stream().mapToDouble(Used::rhPct).max().orElse(Double.NaN);
    }

    /** Whether a column differs between conditions by more than this. */
    static boolean varies(List<Used> used, java.util.function.ToDoubleFunction<Used> column, double least) {
        double low = used.stream().mapToDouble(column).min().orElse(0);
        double high = used.stream().mapToDouble(column).max().orElse(0);
        return high - low > least;
    }

    boolean withRatio() {
        return used.stream().anyMatch(Used::withRatio);
    }
}
