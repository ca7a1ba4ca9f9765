package org.tableweather.schema.check;

import java.util.function.Supplier;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;

/** Judges one trial that could be read. */
public final class TrialRules {
    private static final String FILE = "trials.csv";
    private static final long BEFORE_S = 3600;
    private static final long AFTER_S = 24 * 3600;
    private static final double SPOT_TEMP_K = 2;
    private static final double SPOT_RH_PCT = 10;
    private static final double SAME_ANGLE_DEG = 0.1;

    private TrialRules() {}

    /**
     * Judges.
     *
     * @param trial the trial
     * @param shot its shot; null when it is not known
     * @param session what is known of its session
     * @param logTempC what the log says at its time, °C; NaN when nothing
     * @param logRhPct what the log says at its time, %; NaN when nothing
     * @param row its row
     * @param findings takes what is found
     */
    public static void check(
            Trial trial,
            Shot shot,
            SessionFacts session,
            double logTempC,
            double logRhPct,
            long row,
            Findings findings) {
        climate(trial, logTempC, logRhPct, row, findings);
        outcome(trial, row, findings);
        angles(trial, row, findings);
        OutcomeRules.check(trial, shot, session.playingLengthM(), row, findings);
        if (shot != null && session.delivery().isPresent()) {
            delivery(trial, shot, session.delivery().get(), row, findings);
        }
        long sessionStart = session.startSecond();
        if (shot != null) {
            againstShot(trial, shot, row, findings);
        }
        if (sessionStart != Long.MIN_VALUE && trial.startedAt().isPresent()) {
            long after = trial.startedAt().get().getEpochSecond() - sessionStart;
            if (after < -BEFORE_S || after > AFTER_S) {
                String time = trial.startedAt().get().toString();
                add(
                        findings,
                        ProtocolChecks.OUTSIDE_SESSION,
                        row,
                        "started_at",
                        time,
                        () -> "the session started " + Math.abs(after) / 60 + " min "
                                + (after < 0 ? "later" : "earlier"));
            }
        }
    }

    private static void delivery(Trial trial, Shot shot, String delivery, long row, Findings findings) {
        boolean known = delivery.equals("ramp") || delivery.equals("cue");
        if (known && shot.delivery().isPresent() && !shot.delivery().get().equals(delivery)) {
            add(
                    findings,
                    ProtocolChecks.DELIVERY_DIFFERS,
                    row,
                    "shot",
                    trial.shot(),
                    () -> "the session delivers by " + delivery + ", the shot by "
                            + shot.delivery().get());
        }
    }

    private static void climate(Trial trial, double logTempC, double logRhPct, long row, Findings findings) {
        double temp = trial.climate().tempC();
        if (temp < 5 || temp > 45) {
            add(findings, UnitChecks.TEMPERATURE_UNUSUAL, row, "temp_c", Double.toString(temp), () -> temp + " °C");
        }
        if (trial.rhPct() == 0) {
            add(findings, ClimateChecks.DRY_ZERO, row, "rh_pct", "0", () -> "a relative humidity of exactly 0 %");
        }
        if (trial.climate().source() == ClimateSource.SPOT
                && (Math.abs(trial.tempC() - logTempC) > SPOT_TEMP_K
                        || Math.abs(trial.rhPct() - logRhPct) > SPOT_RH_PCT)) {
            add(
                    findings,
                    ClimateChecks.SPOT_DIFFERS_FROM_LOG,
                    row,
                    "rh_pct",
                    Double.toString(trial.rhPct()),
                    () -> "the row says " + trial.tempC() + " °C and " + trial.rhPct() + " %, the log "
                            + rounded(logTempC) + " °C and " + rounded(logRhPct) + " %");
        }
    }

    private static double rounded(double value) {
        return Math.round(value * 10) / 10.0;
    }

    private static void outcome(Trial trial, long row, Findings findings) {
        if (!hasOutcome(trial) && findings.count(StructureChecks.OUTCOME_COLUMN) == 0) {
            String kind = trial.kind().schemaName();
            findings.add(
                    ProtocolChecks.OUTCOME_MISSING,
                    Place.row(FILE, row),
                    null,
                    () -> "trial " + trial.trial() + " of kind " + kind + " has no outcome");
        }
    }

    private static boolean hasOutcome(Trial trial) {
        return switch (trial.kind()) {
            case REBOUND -> known(trial.reboundAngleDeg()) || known(trial.finalReboundAngleDeg());
            case BANK, KICK ->
                known(trial.finalReboundAngleDeg())
                        || known(trial.landingOffsetDia())
                        || trial.made() != Made.NOT_STATED;
            case SPEED -> known(trial.runOutM()) || known(trial.runOutLengths());
            case BREAK -> trial.ballsMade() >= 0 || known(trial.spreadNearestMm()) || known(trial.cueBallTravelM());
            case THROW -> known(trial.objectAngleDeg());
            case DEFLECTION -> known(trial.deflectionAngleDeg());
            case HOP -> known(trial.hopHeightMm());
        };
    }

    private static boolean known(double value) {
        return !Double.isNaN(value);
    }

    private static void angles(Trial trial, long row, Findings findings) {
        double first = trial.reboundAngleDeg();
        double last = trial.finalReboundAngleDeg();
        boolean oneRail = trial.kind() == Kind.REBOUND || trial.rails() == 1;
        if (oneRail && Math.abs(first - last) > SAME_ANGLE_DEG) {
            add(
                    findings,
                    GeometryChecks.FINAL_DIFFERS,
                    row,
                    "final_rebound_angle_deg",
                    Double.toString(last),
                    () -> "rebound_angle_deg is " + first);
        }
        if ((first < 0 || last < 0) && !(Math.abs(trial.sideSpinRps()) > 0) && !(Math.abs(trial.tipOffsetMm()) > 0)) {
            double value = first < 0 ? first : last;
            String column = first < 0 ? "rebound_angle_deg" : "final_rebound_angle_deg";
            add(
                    findings,
                    GeometryChecks.NEGATIVE_REBOUND,
                    row,
                    column,
                    Double.toString(value),
                    () -> value + "° is on the side the ball came from");
        }
    }

    private static void againstShot(Trial trial, Shot shot, long row, Findings findings) {
        if (shot.kind() != trial.kind()) {
            add(
                    findings,
                    ProtocolChecks.KIND_DIFFERS,
                    row,
                    "kind",
                    trial.kind().schemaName(),
                    () -> "the shot " + shot.id() + " is of kind " + shot.kind().schemaName());
        }
        if (trial.kind() == Kind.REBOUND
                && Double.isNaN(trial.approachAngleDeg())
                && shot.approachAngleDeg().isEmpty()) {
            add(
                    findings,
                    ProtocolChecks.APPROACH_UNKNOWN,
                    row,
                    "approach_angle_deg",
                    null,
                    () -> "neither the trial nor its shot has an angle of approach");
        }
        if (Math.abs(trial.landingOffsetDia()) > longest(shot)) {
            double value = trial.landingOffsetDia();
            add(
                    findings,
                    UnitChecks.LANDING_OFFSET,
                    row,
                    "landing_offset_dia",
                    Double.toString(value),
                    () -> value + " diamonds is longer than the target rail");
        }
    }

    private static double longest(Shot shot) {
        boolean shortRail = shot.targetRail()
                .filter(rail -> rail == Rail.HEAD || rail == Rail.FOOT)
                .isPresent();
        return shortRail ? 4 : 8;
    }

    private static void add(
            Findings findings, Check check, long row, String column, String value, Supplier<String> message) {
        findings.add(check, Place.cell(FILE, row, column), value, message);
    }
}
