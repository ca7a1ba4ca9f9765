package org.tableweather.schema.folder;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.OutcomePrint;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.check.SessionRules;
import org.tableweather.schema.check.StatisticsChecks;
import org.tableweather.schema.check.StructureChecks;
import org.tableweather.schema.record.Trial;

/**
 * Makes sessions of rows. Neighbouring rows of a session make a run, which is handed on as it comes; when the run ends,
 * the session is taken for complete, judged, and handed on. If rows of it come later all the same, what was found is
 * thrown away, and the session is marked to be gathered in a second reading.
 *
 * <p>Sessions are judged and handed on by a second thread, one after the other, while the next rows are read.
 */
final class SessionAssembly implements TrialRows.Receiver, AutoCloseable {
    /** Most rows that are handed on in one piece. */
    static final int CHUNK = 8192;
    /** Most trials of one session. */
    static final int MAX_SESSION = 250_000;

    private final SessionEntries entries;
    private final boolean handsTrials;
    private final boolean handsSessions;
    private final TrialSink trialSink;
    private final SessionSink sessionSink;
    private final Findings findings;
    private final int[] counts;
    private final BitSet ended = new BitSet();
    private final BitSet scattered = new BitSet();
    private final BitSet damaged = new BitSet();
    /** Written by the second thread alone while it works. */
    private final Map<Integer, Findings> judged = new TreeMap<>();

    private final Map<Long, Integer> prints = new HashMap<>();

    private final SecondHand secondHand = new SecondHand();

    private int current = -1;
    private SessionTrials run = new SessionTrials();
    private List<Trial> chunk = new ArrayList<>();

    /**
     * An assembly.
     *
     * @param entries the sessions
     * @param handsOver whether the sessions are sound, so that trials and sessions may be handed on
     */
    SessionAssembly(
            SessionEntries entries,
            boolean handsOver,
            TrialSink trialSink,
            SessionSink sessionSink,
            Findings findings) {
        this.entries = entries;
        this.handsTrials = handsOver && trialSink != TrialSink.NONE;
        this.handsSessions = handsOver && sessionSink != SessionSink.NONE;
        this.trialSink = trialSink;
        this.sessionSink = sessionSink;
        this.findings = findings;
        this.counts = new int[entries.size()];
    }

    @Override
    public void refused(int session) {
        damaged.set(session);
    }

    @Override
    public void accept(int session, Trial trial, long row) throws IOException {
        if (session != current) {
            endRun();
            current = session;
            if (ended.get(session)) {
                scattered.set(session);
            }
        }
        counts[session]++;
        if (handsTrials) {
            chunk.add(trial);
            if (chunk.size() == CHUNK) {
                handChunk();
            }
        }
        if (scattered.get(session)) {
            return;
        }
        if (run.size() < MAX_SESSION) {
            run.add(trial, row);
        } else if (run.size() == MAX_SESSION && counts[session] == MAX_SESSION + 1) {
            tooLarge(session, row);
        }
    }

    private void tooLarge(int session, long row) {
        damaged.set(session);
        findings.add(
                StructureChecks.SESSION_SIZE,
                Place.row(TrialRows.FILE, row),
                entries.session(session).id(),
                () -> "session " + entries.session(session).id() + " has more trials");
    }

    private void handChunk() throws IOException {
        if (!chunk.isEmpty()) {
            trialSink.accept(current, Collections.unmodifiableList(chunk));
        }
        chunk = new ArrayList<>(Math.min(CHUNK, chunk.size()));
    }

    private void endRun() throws IOException {
        if (current < 0) {
            return;
        }
        handChunk();
        ended.set(current);
        if (!scattered.get(current)) {
            int session = current;
            SessionTrials complete = run;
            boolean whole = !damaged.get(session);
            secondHand.give(() -> complete(session, complete, whole));
        }
        run = new SessionTrials();
        current = -1;
    }

    private void complete(int session, SessionTrials trials, boolean whole) throws IOException {
        Findings found = new Findings();
        trials.sort(TrialRows.FILE, found);
        if (whole) {
            SessionRules.check(entries.session(session), trials.trials(), trials.rows(), found);
        }
        repeated(session, trials, found);
        if (!found.isEmpty()) {
            judged.put(session, found);
        }
        if (handsSessions) {
            sessionSink.accept(entries.record(session, trials.trials()), trials.trials());
        }
    }

    private void repeated(int session, SessionTrials trials, Findings found) {
        long print = OutcomePrint.of(trials.trials());
        Integer other = print == 0 ? null : prints.putIfAbsent(print, session);
        if (other != null && other != session) {
            found.add(
                    StatisticsChecks.REPEATED_SESSION,
                    Place.row(TrialRows.FILE, trials.rows()[0]),
                    entries.session(session).id(),
                    () -> "session " + entries.session(session).id() + " has the outcomes of session "
                            + entries.session(other).id());
        }
    }

    /** Ends the first reading. */
    void endOfFile() throws IOException {
        endRun();
        secondHand.finish();
        judged.keySet().removeIf(scattered::get);
        if (ended.isEmpty() && damaged.isEmpty()) {
            return; // no row at all, which is told of the file
        }
        for (int i = 0; i < counts.length; i++) {
            int session = i;
            if (counts[i] == 0 && !damaged.get(i)) {
                findings.add(
                        StructureChecks.SESSION_WITHOUT_TRIALS,
                        Place.json("/sessions/" + i),
                        entries.session(i).id(),
                        () -> "session " + entries.session(session).id() + " has no row in trials.csv");
            }
        }
    }

    /** Sessions with trials. */
    int sessionsWithTrials() {
        return ended.cardinality();
    }

    /**
     * The scattered sessions in groups that fit the memory.
     *
     * @param most trials of a group, if it has more than one session
     */
    List<BitSet> scatteredGroups(int most) {
        List<BitSet> groups = new ArrayList<>();
        BitSet group = new BitSet();
        long trials = 0;
        for (int i = scattered.nextSetBit(0); i >= 0; i = scattered.nextSetBit(i + 1)) {
            if (counts[i] > MAX_SESSION) {
                tooLarge(i, 1);
                continue;
            }
            if (trials > 0 && trials + counts[i] > most) {
                groups.add(group);
                group = new BitSet();
                trials = 0;
            }
            group.set(i);
            trials += counts[i];
        }
        if (!group.isEmpty()) {
            groups.add(group);
        }
        return groups;
    }

    /** Gathers the sessions of one group in a second reading. */
    TrialRows.Receiver gather(Map<Integer, SessionTrials> group) {
        return new TrialRows.Receiver() {
            @Override
            public void refused(int session) {
                // told in the first reading
            }

            @Override
            public void accept(int session, Trial trial, long row) {
                group.computeIfAbsent(session, index -> new SessionTrials()).add(trial, row);
            }
        };
    }

    /** Hands on the sessions of a group. */
    void completeGroup(Map<Integer, SessionTrials> group) throws IOException {
        for (Map.Entry<Integer, SessionTrials> entry : group.entrySet()) {
            complete(entry.getKey(), entry.getValue(), !damaged.get(entry.getKey()));
        }
    }

    /** Adds what was found in the sessions, in the order of the sessions. */
    void report() {
        judged.values().forEach(findings::addAll);
    }

    /** Ends the second thread. */
    @Override
    public void close() {
        secondHand.close();
    }
}
