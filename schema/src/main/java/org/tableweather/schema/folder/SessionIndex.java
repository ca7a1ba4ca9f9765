package org.tableweather.schema.folder;

import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.tableweather.schema.check.ClimateChecks;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.SessionFacts;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.json.ContributionDocument;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;

/** What a row needs to know of its session and shot, found quickly. */
final class SessionIndex {
    /** No session of this id. */
    static final int UNKNOWN = -1;
    /** The sessions are not known, since {@code contribution.json} could not be understood. */
    static final int UNDECIDED = -2;

    static final long NO_TIME = Long.MIN_VALUE;

    private final boolean decided;
    private final List<Session> sessions;
    private final Map<String, PoolTable> tables = new HashMap<>();
    private final Map<String, BallSet> ballSets = new HashMap<>();
    private final Map<String, Integer> byId = new HashMap<>();
    private final Map<String, Shot> shots = new HashMap<>();
    private final Set<String> otherShots;
    private final ClimateLog[] logs;
    private final Climate[] stated;
    private final long[] starts;
    private final SessionFacts[] facts;
    private final BitSet toldGap = new BitSet();
    private final BitSet toldStart = new BitSet();
    private final Findings findings;
    private BitSet wanted;
    private String lastId = "";
    private int lastIndex = UNKNOWN;

    SessionIndex(ContributionDocument read, ClimateLog.ByInstrument climate, Findings findings) {
        Optional<Contribution> contribution = read.contribution();
        this.sessions = contribution.map(Contribution::sessions).orElse(List.of());
        this.decided = !sessions.isEmpty();
        contribution.ifPresent(content -> content.tables().forEach(table -> tables.putIfAbsent(table.id(), table)));
        contribution.ifPresent(content -> content.ballSets().forEach(set -> ballSets.putIfAbsent(set.id(), set)));
        this.findings = findings;
        this.otherShots = new HashSet<>(read.shotIds());
        this.logs = new ClimateLog[sessions.size()];
        this.stated = new Climate[sessions.size()];
        this.starts = new long[sessions.size()];
        this.facts = new SessionFacts[sessions.size()];
        ShotCatalogue.all().forEach(shot -> shots.put(shot.id(), shot));
        contribution.ifPresent(content -> content.shots().forEach(shot -> shots.put(shot.id(), shot)));
        for (int i = 0; i < sessions.size(); i++) {
            Session session = sessions.get(i);
            byId.putIfAbsent(session.id(), i);
            logs[i] = session.instrument().map(climate::find).orElse(null);
            stated[i] = stated(session);
            starts[i] = session.startedAt().map(time -> time.toEpochSecond()).orElse(NO_TIME);
            facts[i] = facts(session, i);
            statedAgainstLog(i);
        }
    }

    private SessionFacts facts(Session session, int index) {
        double lengthM = table(index)
                        .map(PoolTable::playingLengthMm)
                        .orElse(OptionalDouble.empty())
                        .orElse(Double.NaN)
                / 1000;
        return new SessionFacts(starts[index], lengthM, session.delivery());
    }

    private void statedAgainstLog(int index) {
        ClimateLog log = logs[index];
        if (log == null || starts[index] == NO_TIME || !log.seek(starts[index])) {
            return;
        }
        double tempC = log.tempAt(starts[index]);
        double rhPct = log.rhAt(starts[index]);
        if (Math.abs(stated[index].tempC() - tempC) > 2 || Math.abs(stated[index].rhPct() - rhPct) > 10) {
            findings.add(
                    ClimateChecks.STATED_DIFFERS_FROM_LOG,
                    Place.json("/sessions/" + index + "/rhPct"),
                    Double.toString(stated[index].rhPct()),
                    () -> "the log says " + Math.round(tempC * 10) / 10.0 + " °C and " + Math.round(rhPct * 10) / 10.0
                            + " % at the start of session "
                            + sessions.get(index).id());
        }
    }

    /** What the rules of a trial need to know of its session. */
    SessionFacts facts(int index) {
        return facts[index];
    }

    private static Climate stated(Session session) {
        double temp = session.statedTempC().orElse(Double.NaN);
        double rh = session.rhPct().orElse(Double.NaN);
        return Double.isNaN(temp) && Double.isNaN(rh) ? Climate.NONE : new Climate(temp, rh, ClimateSource.STATED);
    }

    /** Position of a session, {@link #UNKNOWN} or {@link #UNDECIDED}. */
    int find(String id) {
        if (!id.equals(lastId)) {
            lastId = id;
            lastIndex = decided ? byId.getOrDefault(id, UNKNOWN) : UNDECIDED;
        }
        return lastIndex;
    }

    /** Whether a shot of unknown definition must not be reported as missing: its fault was told elsewhere. */
    boolean toleratesShot(String id) {
        return otherShots.contains(id) || !decided;
    }

    /** Reads on for these sessions only. */
    void want(BitSet some) {
        wanted = some;
    }

    boolean wants(int index) {
        return wanted == null || wanted.get(index);
    }

    /** The log of the session's instrument; null without. */
    ClimateLog log(int index) {
        return logs[index];
    }

    /** When the session started, s since 1970; {@link #NO_TIME} when it does not say. */
    long startSecond(int index) {
        return starts[index];
    }

    /** The table of a session. */
    Optional<PoolTable> table(int index) {
        return Optional.ofNullable(tables.get(sessions.get(index).table()));
    }

    /** The size of a session's table and balls; empty when the table's length is not stated. */
    Optional<TableSize> tableSize(int index) {
        Optional<BallSet> balls = sessions.get(index).ballSet().map(ballSets::get);
        return table(index).flatMap(table -> PublishedTables.sizeOf(table, balls));
    }

    /** The id of a session. */
    String id(int index) {
        return sessions.get(index).id();
    }

    /** The definition of a shot; null when it is not known. */
    Shot shot(String id) {
        return shots.get(id);
    }

    /**
     * The climate of a trial, best first: its own reading, the log, what is stated for the session. The humidity decides
     * which one it is called; a spot reading of humidity alone takes the temperature of the next best.
     */
    Climate climate(int index, double spotTemp, double spotRh, double logTemp, double logRh) {
        Climate hand = stated[index];
        double temp = first(spotTemp, logTemp, hand.tempC());
        if (!Double.isNaN(spotRh)) {
            return new Climate(temp, spotRh, ClimateSource.SPOT);
        }
        if (!Double.isNaN(logRh)) {
            return new Climate(temp, logRh, ClimateSource.LOG);
        }
        if (!Double.isNaN(spotTemp)) {
            return new Climate(temp, hand.rhPct(), Double.isNaN(hand.rhPct()) ? ClimateSource.SPOT : hand.source());
        }
        return hand;
    }

    private static double first(double best, double next, double last) {
        return !Double.isNaN(best) ? best : !Double.isNaN(next) ? next : last;
    }

    /** Notes once for a session that its log does not cover a trial. */
    void missedLog(int index, boolean timed, long row) {
        if (!toldGap.get(index) && (timed || starts[index] != NO_TIME)) {
            toldGap.set(index);
            findings.add(
                    ClimateChecks.LOG_GAP,
                    Place.cell(TrialRows.FILE, row, "started_at"),
                    sessions.get(index).id(),
                    () -> "the log of instrument "
                            + sessions.get(index).instrument().orElse("")
                            + " does not cover this time; the first such trial of its session is named");
        }
    }

    /** Notes once for a session that its trials take the log's climate at its start. */
    void usedStart(int index) {
        if (!toldStart.get(index)) {
            toldStart.set(index);
            findings.add(
                    ClimateChecks.LOG_WITHOUT_TIMES,
                    Place.file(TrialRows.FILE),
                    sessions.get(index).id(),
                    () -> "trials of session " + sessions.get(index).id() + " have no time of their own");
        }
    }
}
