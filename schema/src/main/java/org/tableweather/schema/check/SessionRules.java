package org.tableweather.schema.check;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/** Judges a whole session. */
public final class SessionRules {
    private static final String FILE = "trials.csv";
    private static final int FEW = 5;
    private static final int MANY = 20;
    private static final double HELD_RH_PCT = 6;
    private static final double HELD_TEMP_K = 3;

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
        rules.climate();
        rules.numbers();
        rules.misses();
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

    private void climate() {
        int stated = 0;
        int unknown = 0;
        double lowRh = Double.POSITIVE_INFINITY;
        double highRh = Double.NEGATIVE_INFINITY;
        double lowTemp = Double.POSITIVE_INFINITY;
        double highTemp = Double.NEGATIVE_INFINITY;
        double dampestTemp = Double.NaN;
        for (Trial trial : trials) {
            double temp = trial.climate().tempC();
            double rh = trial.climate().rhPct();
            stated += trial.climate().source() == ClimateSource.STATED ? 1 : 0;
            unknown += trial.climate().isKnown() ? 0 : 1;
            if (rh < lowRh) {
                lowRh = rh;
            }
            if (rh > highRh) {
                highRh = rh;
                dampestTemp = temp;
            }
            lowTemp = temp < lowTemp ? temp : lowTemp;
            highTemp = temp > highTemp ? temp : highTemp;
        }
        sources(stated, unknown);
        held(lowRh, highRh, lowTemp, highTemp);
        bed(dampestTemp, highRh);
    }

    private void sources(int stated, int unknown) {
        if (unknown > 0) {
            findings.add(
                    ClimateChecks.UNKNOWN,
                    start(),
                    session.id(),
                    () -> unknown + " of " + trials.size() + " trials of session " + session.id()
                            + " have no temperature or no humidity");
        }
        if (stated > 0) {
            findings.add(
                    ClimateChecks.STATED,
                    start(),
                    session.id(),
                    () -> stated + " of " + trials.size() + " trials of session " + session.id()
                            + " take the climate stated by hand");
        }
    }

    private void held(double lowRh, double highRh, double lowTemp, double highTemp) {
        if (highRh - lowRh > HELD_RH_PCT || highTemp - lowTemp > HELD_TEMP_K) {
            findings.add(
                    ClimateChecks.NOT_HELD,
                    start(),
                    session.id(),
                    () -> "session " + session.id() + " runs from " + tenth(lowRh) + " to " + tenth(highRh)
                            + " %RH and from " + tenth(lowTemp) + " to " + tenth(highTemp) + " °C");
        }
    }

    /** By the air of the dampest trial. */
    private void bed(double tempC, double rhPct) {
        OptionalDouble bed = session.statedBedC();
        if (bed.isEmpty() || Double.isNaN(tempC) || !(rhPct > 0)) {
            return;
        }
        double dewPoint = MoistAir.of(tempC, rhPct).dewPointC();
        if (bed.getAsDouble() < dewPoint) {
            findings.add(
                    ClimateChecks.BED_BELOW_DEW_POINT,
                    start(),
                    Double.toString(bed.getAsDouble()),
                    () -> "the bed of session " + session.id() + " is at " + tenth(bed.getAsDouble())
                            + " °C, the dew point of the air at " + tenth(dewPoint) + " °C");
        }
    }

    private static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
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
