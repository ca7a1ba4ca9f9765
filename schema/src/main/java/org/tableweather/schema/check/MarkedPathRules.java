package org.tableweather.schema.check;

import java.util.List;
import java.util.Map;
import org.tableweather.schema.geometry.Agreement;
import org.tableweather.schema.geometry.Measured;
import org.tableweather.schema.geometry.PathReduction;
import org.tableweather.schema.geometry.RailTouch;
import org.tableweather.schema.geometry.TypedAgainstMarked;
import org.tableweather.schema.geometry.TypedResolution;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Trial;

/** Judges the marked path of one trial, and what its row says beside it. */
public final class MarkedPathRules {
    private static final String TRIALS = "trials.csv";
    private static final String CONTACTS = "contacts.csv";
    private static final TypedAgainstMarked COMPARISON = new TypedAgainstMarked(TypedResolution.BY_EYE);
    private static final double FASTEST_MPS = 16;
    private static final double GAIN = 1.1;

    private final Trial typed;
    private final long row;
    private final Map<Integer, Integer> rowOf;
    private final Findings findings;

    /**
     * The rules for one trial.
     *
     * @param typed as its row says
     * @param row its row
     * @param rowOf row of each marked point by its number
     * @param findings takes what is found
     */
    public MarkedPathRules(Trial typed, long row, Map<Integer, Integer> rowOf, Findings findings) {
        this.typed = typed;
        this.row = row;
        this.rowOf = rowOf;
        this.findings = findings;
    }

    /** Judges the numbers of the points. */
    public void numbers(List<Contact> contacts) {
        int expected = 1;
        for (Contact contact : contacts) {
            if (contact.seq() > expected) {
                mark(
                        GeometryChecks.SEQ_GAP,
                        contact.seq(),
                        Integer.toString(contact.seq()),
                        GeometryChecks.SEQ_GAP.bound(),
                        "point " + expected + " of trial " + typed.trial() + " is missing");
                return;
            }
            expected = contact.seq() + 1;
        }
    }

    /** Tells why a path says nothing. */
    public void refuse(PathReduction.Refused refused) {
        Check check = check(refused.reason());
        if (check != null) {
            mark(
                    check,
                    refused.seq(),
                    refused.value(),
                    refused.bound(),
                    "the path of trial " + typed.trial() + " of session " + typed.session() + " is not used: "
                            + refused.value());
        }
    }

    /** Null where the reading of the row has told it. */
    private static Check check(PathReduction.Reason reason) {
        return switch (reason) {
            case TOO_FEW_POINTS -> GeometryChecks.PATH_SHORT;
            case OUT_OF_SEQUENCE -> GeometryChecks.PATH_SEQUENCE;
            case NO_POSITION -> GeometryChecks.NO_PLACE;
            case TWO_POSITIONS -> GeometryChecks.TWO_PLACES;
            case RAIL_NOT_NAMED -> null;
            case OUTSIDE_THE_BED -> GeometryChecks.OUTSIDE_CENTRES;
            case OFF_ITS_RAIL -> GeometryChecks.OFF_RAIL;
            case IMPOSSIBLE_ORDER -> GeometryChecks.RAILS_ORDER;
            case SAME_PLACE -> GeometryChecks.SAME_PLACE;
            case TIMES_NOT_INCREASING -> GeometryChecks.TIMES_EQUAL;
        };
    }

    private void mark(Check check, int seq, String value, String bound, String message) {
        int at = rowOf.getOrDefault(
                seq, rowOf.values().stream().min(Integer::compare).orElse(1));
        findings.add(check, Place.row(CONTACTS, at), value, bound, () -> message);
    }

    /**
     * Judges a path, and compares it with what was typed.
     *
     * @param path of the trial
     * @param hasShot whether it is the path of a shot with rails
     */
    public void check(PathReduction.Reduced path, boolean hasShot) {
        if (hasShot && !path.followsShot()) {
            mark(
                    GeometryChecks.NOT_THE_SHOT,
                    0,
                    typed.shot(),
                    GeometryChecks.NOT_THE_SHOT.bound(),
                    "trial " + typed.trial() + " of session " + typed.session() + " touches "
                            + path.touches().stream()
                                    .map(touch -> touch.rail().schemaName())
                                    .toList());
        }
        path.touches().forEach(this::speeds);
        rails(path);
        COMPARISON.compare(typed, path).forEach(this::agree);
    }

    private void agree(String column, Agreement pair) {
        if (pair.holds()) {
            return;
        }
        Check check = column.startsWith("landing") ? GeometryChecks.LANDING_DIFFERS : GeometryChecks.ANGLE_DIFFERS;
        findings.add(
                check,
                Place.cell(TRIALS, row, column),
                Double.toString(pair.typed()),
                () -> "the contacts give " + rounded(pair.reduced().value()) + " ± "
                        + rounded(pair.reduced().standardUncertainty()) + ", which differs by "
                        + rounded(Math.abs(pair.difference())) + "; at most " + rounded(pair.bound()));
    }

    private void rails(PathReduction.Reduced path) {
        if (typed.rails() >= 0 && typed.rails() != path.counted()) {
            findings.add(
                    GeometryChecks.RAILS_DIFFER,
                    Place.cell(TRIALS, row, "rails"),
                    Integer.toString(typed.rails()),
                    () -> "the contacts have " + path.counted());
        }
    }

    private void speeds(RailTouch touch) {
        Measured before = touch.approachSpeedMps().orElse(new Measured(Double.NaN, 0));
        Measured after = touch.reboundSpeedMps().orElse(new Measured(Double.NaN, 0));
        double fastest = Double.isNaN(before.value()) ? after.value() : before.value();
        if (fastest > FASTEST_MPS) {
            mark(
                    GeometryChecks.PATH_SPEED,
                    touch.seq(),
                    rounded(fastest) + " m/s",
                    GeometryChecks.PATH_SPEED.bound(),
                    rounded(fastest) + " m/s at the " + touch.rail().schemaName() + " rail");
        }
        double gained = after.value() - GAIN * before.value();
        if (gained > 3 * Math.hypot(after.standardUncertainty(), GAIN * before.standardUncertainty())) {
            mark(
                    GeometryChecks.PATH_SPEEDS_UP,
                    touch.seq(),
                    rounded(after.value()) + " m/s",
                    GeometryChecks.PATH_SPEEDS_UP.bound(),
                    rounded(before.value()) + " m/s before the " + touch.rail().schemaName() + " rail, "
                            + rounded(after.value()) + " m/s after it");
        }
    }

    private static double rounded(double value) {
        return Math.round(value * 100) / 100.0;
    }
}
