package org.tableweather.schema.check;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/** Judges a whole session. */
public final class SessionRules {
    private static final String FILE = "trials.csv";
    private static final int FEW = 5;
    private static final int MANY = 20;
    private static final int ALIKE = 5;
    private static final long LONGEST_S = 10 * 3600;

    private final Session session;
    private final List<Trial> trials;
    private final int[] rows;
    private final Findings findings;

    private SessionRules(Session session, List<Trial> trials, int[] rows, Findings findings) {
        this.session = session;
        this.trials = trials;
        this.rows = rows;
        this.findings = findings;
    }

    /**
     * Judges.
     *
     * @param session its entry
     * @param trials all its trials in canonical order
     * @param rows the row of each
     * @param findings takes what is found
     */
    public static void check(Session session, List<Trial> trials, int[] rows, Findings findings) {
        SessionRules rules = new SessionRules(session, trials, rows, findings);
        SessionClimateRules.check(session, trials, rows[0], findings);
        rules.numbers();
        rules.times();
        rules.misses();
        rules.repeats();
        Map<String, Members> byShot = rules.byShot();
        rules.order(byShot);
        byShot.forEach((shot, members) -> {
            rules.few(shot, members);
            Outliers.check(trials, members, rows, findings);
        });
    }

    private Map<String, Members> byShot() {
        Map<String, Members> byShot = new LinkedHashMap<>();
        String last = null;
        Members members = null;
        for (int i = 0; i < trials.size(); i++) {
            String shot = trials.get(i).shot();
            if (!shot.equals(last)) {
                members = byShot.computeIfAbsent(shot, id -> new Members());
                last = shot;
            }
            members.add(i);
        }
        return byShot;
    }

    private Place start() {
        return Place.row(FILE, rows[0]);
    }

    /** Ids of digits alone, in canonical order, are numbers that rise. */
    private void numbers() {
        long previous = -1;
        for (int i = 0; i < trials.size(); i++) {
            long number = number(trials.get(i).trial());
            if (number < 0) {
                return;
            }
            if (i > 0 && number > previous + 1) {
                long before = previous;
                findings.add(
                        ProtocolChecks.TRIAL_GAP,
                        Place.cell(FILE, rows[i], "trial"),
                        trials.get(i).trial(),
                        () -> "session " + session.id() + " goes from trial " + before + " to trial " + number);
            }
            previous = number;
        }
    }

    private static long number(String id) {
        if (id.length() > 15) {
            return -1;
        }
        long number = 0;
        for (int i = 0; i < id.length(); i++) {
            int digit = id.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return -1;
            }
            number = number * 10 + digit;
        }
        return number;
    }

    /** Whether times keep to the order of the numbers, and to one visit. */
    private void times() {
        long first = Long.MAX_VALUE;
        long last = Long.MIN_VALUE;
        long previous = Long.MIN_VALUE;
        boolean told = false;
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            if (trial.startedAt().isEmpty()) {
                continue;
            }
            long second = trial.startedAt().get().getEpochSecond();
            if (second < previous && !told && number(trial.trial()) >= 0) {
                told = true;
                disordered(i);
            }
            previous = second;
            first = Math.min(first, second);
            last = Math.max(last, second);
        }
        if (last > first && last - first > LONGEST_S) {
            long hours = (last - first) / 3600;
            findings.add(
                    ProtocolChecks.LONG_SESSION,
                    start(),
                    session.id(),
                    () -> "session " + session.id() + " lasts more than " + hours + " h");
        }
    }

    private void disordered(int i) {
        findings.add(
                ProtocolChecks.TIMES_DISORDERED,
                Place.cell(FILE, rows[i], "started_at"),
                trials.get(i).startedAt().orElseThrow().toString(),
                () -> "trial " + trials.get(i).trial() + " of session " + session.id()
                        + " is earlier than the trial before it");
    }

    private void repeats() {
        int run = 1;
        for (int i = 1; i < trials.size(); i++) {
            run = OutcomePrint.repeats(trials.get(i - 1), trials.get(i)) ? run + 1 : 1;
            if (run == ALIKE) {
                int last = i;
                findings.add(
                        StatisticsChecks.RUN_OF_EQUALS,
                        Place.row(FILE, rows[i]),
                        trials.get(i).trial(),
                        () -> ALIKE + " trials of session " + session.id() + " up to trial "
                                + trials.get(last).trial() + " have the same outcomes");
            }
        }
    }

    private void misses() {
        int shots = 0;
        for (Trial trial : trials) {
            if (trial.made() == Made.NO) {
                return;
            }
            boolean aimed = trial.kind() == Kind.BANK || trial.kind() == Kind.KICK;
            shots += aimed && trial.made() == Made.YES ? 1 : 0;
        }
        if (shots >= MANY) {
            int made = shots;
            findings.add(
                    ProtocolChecks.ONLY_MADE,
                    start(),
                    session.id(),
                    () -> "all " + made + " banks and kicks of session " + session.id() + " were made");
        }
    }

    private void few(String shot, Members members) {
        if (members.size() < FEW) {
            findings.add(
                    ProtocolChecks.FEW_TRIALS,
                    Place.row(FILE, rows[members.first()]),
                    shot,
                    () -> "session " + session.id() + " has " + members.size() + " trials of " + shot);
        }
    }

    /** Trials in canonical order are taken to be in the order in which they were shot when their ids are numbers. */
    private void order(Map<String, Members> byShot) {
        if (byShot.size() < 2) {
            return;
        }
        if (session.orderRandomised().isEmpty()) {
            findings.add(
                    ProtocolChecks.ORDER_UNSTATED,
                    start(),
                    session.id(),
                    () -> "session " + session.id() + " has " + byShot.size()
                            + " shots and does not say in which order");
        } else if (!session.orderRandomised().get()) {
            findings.add(
                    ProtocolChecks.ORDER_FIXED,
                    start(),
                    session.id(),
                    () -> "the order of the shots of session " + session.id() + " was not drawn by lot");
        } else if (byShot.values().stream().allMatch(SessionRules::isBlock)) {
            findings.add(
                    ProtocolChecks.ORDER_BLOCKED,
                    start(),
                    session.id(),
                    () -> "session " + session.id() + " shot its " + byShot.size() + " shots one after the other");
        }
    }

    private static boolean isBlock(Members members) {
        return members.size() > 2 && members.last() - members.first() == members.size() - 1;
    }
}
