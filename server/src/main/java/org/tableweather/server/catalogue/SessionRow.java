package org.tableweather.server.catalogue;

import java.time.Instant;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * A session ready to be stored.
 *
 * @param entry the session, its room's position rounded
 * @param trials how many
 * @param startedAt first known time
 * @param endedAt last known time
 * @param tempC the climates that stand for the trials, °C
 * @param rhPct the same, %
 * @param climateComplete whether both are known for every trial
 * @param shots trials of each shot and kind
 */
record SessionRow(
        SessionRecord entry,
        long trials,
        Optional<Instant> startedAt,
        Optional<Instant> endedAt,
        DoubleSummaryStatistics tempC,
        DoubleSummaryStatistics rhPct,
        boolean climateComplete,
        Map<ShotOfKind, Long> shots) {

    /** A shot, and what it is taken to test. */
    record ShotOfKind(String shot, Kind kind) implements Comparable<ShotOfKind> {
        @Override
        public int compareTo(ShotOfKind other) {
            int byShot = shot.compareTo(other.shot);
            return byShot != 0 ? byShot : kind.compareTo(other.kind);
        }
    }

    static SessionRow of(SessionRecord session, List<Trial> trials) {
        DoubleSummaryStatistics tempC = new DoubleSummaryStatistics();
        DoubleSummaryStatistics rhPct = new DoubleSummaryStatistics();
        Map<ShotOfKind, Long> shots = new TreeMap<>();
        Span span = new Span();
        session.session().startedAt().ifPresent(time -> span.add(time.toInstant()));
        ShotOfKind shot = null;
        long run = 0;
        for (Trial trial : trials) {
            addKnown(tempC, trial.climate().tempC());
            addKnown(rhPct, trial.climate().rhPct());
            trial.startedAt().ifPresent(span::add);
            if (shot != null && shot.kind() == trial.kind() && shot.shot().equals(trial.shot())) {
                run++;
                continue;
            }
            addRun(shots, shot, run);
            shot = new ShotOfKind(trial.shot(), trial.kind());
            run = 1;
        }
        addRun(shots, shot, run);
        boolean complete = tempC.getCount() == trials.size() && rhPct.getCount() == trials.size();
        return new SessionRow(
                published(session), trials.size(), span.first(), span.last(), tempC, rhPct, complete, shots);
    }

    private static void addKnown(DoubleSummaryStatistics statistics, double value) {
        if (!Double.isNaN(value)) {
            statistics.accept(value);
        }
    }

    private static void addRun(Map<ShotOfKind, Long> shots, ShotOfKind shot, long run) {
        if (shot != null) {
            shots.merge(shot, run, Long::sum);
        }
    }

    private static SessionRecord published(SessionRecord s) {
        return new SessionRecord(
                s.roomKey(),
                s.sessionKey(),
                s.digest(),
                s.invented(),
                PublicPosition.rounded(s.room()),
                s.table(),
                s.session(),
                s.ballSet(),
                s.cue(),
                s.instrument());
    }

    Session session() {
        return entry.session();
    }

    /** First and last of many times. */
    private static final class Span {
        private Instant first;
        private Instant last;

        void add(Instant time) {
            first = first == null || time.isBefore(first) ? time : first;
            last = last == null || time.isAfter(last) ? time : last;
        }

        Optional<Instant> first() {
            return Optional.ofNullable(first);
        }

        Optional<Instant> last() {
            return Optional.ofNullable(last);
        }
    }
}
