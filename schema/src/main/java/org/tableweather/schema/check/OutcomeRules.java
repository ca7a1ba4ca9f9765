package org.tableweather.schema.check;

import java.util.function.Supplier;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;

/** Judges whether the outcomes of a trial can be believed. NaN passes every bound. */
final class OutcomeRules {
    private static final String FILE = "trials.csv";
    private static final double GRAVITY = 9.80665;

    private final Trial trial;
    private final long row;
    private final Findings findings;

    private OutcomeRules(Trial trial, long row, Findings findings) {
        this.trial = trial;
        this.row = row;
        this.findings = findings;
    }

    static void check(Trial trial, Shot shot, double playingLengthM, long row, Findings findings) {
        OutcomeRules rules = new OutcomeRules(trial, row, findings);
        switch (trial.kind()) {
            case REBOUND, BANK, KICK -> rules.rails(shot);
            case SPEED -> rules.roll();
            case BREAK -> rules.spread();
            case THROW ->
                rules.most(OutcomeChecks.THROW_ANGLE, "object_angle_deg", Math.abs(trial.objectAngleDeg()), 12);
            case DEFLECTION ->
                rules.most(
                        OutcomeChecks.DEFLECTION_ANGLE,
                        "deflection_angle_deg",
                        Math.abs(trial.deflectionAngleDeg()),
                        10);
            case HOP -> rules.most(OutcomeChecks.HOP_HEIGHT, "hop_height_mm", trial.hopHeightMm(), 400);
        }
        double fastest = trial.kind() == Kind.BREAK ? 16 : 10;
        rules.most(OutcomeChecks.APPROACH_SPEED, "approach_speed_mps", trial.approachSpeedMps(), fastest);
        rules.runOuts(playingLengthM);
        rules.otherKinds();
    }

    private void most(Check check, String column, double value, double most) {
        if (value > most) {
            add(check, column, value, () -> value + " is above " + most);
        }
    }

    private void rails(Shot shot) {
        double approach = trial.approachAngleDeg();
        double rebound = trial.reboundAngleDeg();
        boolean spun = Math.abs(trial.sideSpinRps()) > 1 || Math.abs(trial.tipOffsetMm()) > 3;
        if (!spun && Math.abs(Math.abs(rebound) - approach) > 25) {
            add(
                    OutcomeChecks.REBOUND_UNLIKE_APPROACH,
                    "rebound_angle_deg",
                    rebound,
                    () -> "the angle of approach is " + approach + "°");
        }
        if (trial.reboundSpeedMps() > trial.approachSpeedMps()) {
            add(
                    OutcomeChecks.FASTER_OFF_RAIL,
                    "rebound_speed_mps",
                    trial.reboundSpeedMps(),
                    () -> "approach_speed_mps is " + trial.approachSpeedMps());
        }
        most(OutcomeChecks.LANDING_FAR, "landing_offset_dia", Math.abs(trial.landingOffsetDia()), 3);
        countRails(shot);
        if (shot != null
                && shot.kind() == trial.kind()
                && shot.approachAngleDeg().isPresent()) {
            double nominal = shot.approachAngleDeg().getAsDouble();
            if (Math.abs(approach - nominal) > 15) {
                add(
                        OutcomeChecks.APPROACH_UNLIKE_SHOT,
                        "approach_angle_deg",
                        approach,
                        () -> "the shot " + shot.id() + " approaches at " + nominal + "°");
            }
        }
    }

    private void countRails(Shot shot) {
        int rails = trial.rails();
        if (rails == 0 || rails > 1 && trial.kind() == Kind.REBOUND) {
            add(
                    OutcomeChecks.RAILS_OF_KIND,
                    "rails",
                    rails,
                    () -> rails + " rails in a " + trial.kind().schemaName());
        } else if (rails > 0
                && shot != null
                && shot.kind() == trial.kind()
                && !shot.rails().isEmpty()) {
            int wanted = shot.rails().size();
            if (rails != wanted) {
                add(OutcomeChecks.RAILS_UNLIKE_SHOT, "rails", rails, () -> "the shot " + shot.id() + " has " + wanted);
            }
        }
    }

    private void roll() {
        double speed = trial.approachSpeedMps();
        double resistance = speed * speed / (2 * GRAVITY * trial.runOutM());
        if (resistance < 0.003 || resistance > 0.03) {
            add(
                    OutcomeChecks.ROLLING_RESISTANCE,
                    "run_out_m",
                    trial.runOutM(),
                    () -> "from " + speed + " m/s this is a resistance of " + Math.round(resistance * 1e4) / 1e4);
        }
    }

    private void spread() {
        double nearest = trial.spreadNearestMm();
        if (nearest < 52 || nearest > 700) {
            add(OutcomeChecks.SPREAD, "spread_nearest_mm", nearest, () -> nearest + " mm from ball to nearest ball");
        }
        most(OutcomeChecks.BALLS_MADE, "balls_made", trial.ballsMade(), 7);
        most(OutcomeChecks.CUE_BALL_TRAVEL, "cue_ball_travel_m", trial.cueBallTravelM(), 25);
    }

    private void runOuts(double playingLengthM) {
        double expected = trial.runOutLengths() * playingLengthM;
        if (Math.abs(trial.runOutM() - expected) > 0.03 * expected) {
            add(
                    OutcomeChecks.RUN_OUTS_DISAGREE,
                    "run_out_m",
                    trial.runOutM(),
                    () -> trial.runOutLengths() + " lengths of this table are " + Math.round(expected * 1e3) / 1e3
                            + " m");
        }
    }

    private void otherKinds() {
        Kind kind = trial.kind();
        other(kind != Kind.BREAK, "spread_nearest_mm", trial.spreadNearestMm());
        other(kind != Kind.BREAK, "cue_ball_travel_m", trial.cueBallTravelM());
        other(kind != Kind.DEFLECTION, "deflection_angle_deg", trial.deflectionAngleDeg());
        other(kind != Kind.HOP, "hop_height_mm", trial.hopHeightMm());
    }

    private void other(boolean foreign, String column, double value) {
        if (foreign && value == value) {
            add(
                    OutcomeChecks.OTHER_KIND,
                    column,
                    value,
                    () -> "the trial is of kind " + trial.kind().schemaName());
        }
    }

    private void add(Check check, String column, double value, Supplier<String> message) {
        findings.add(check, () -> Place.cell(FILE, row, column), value, message);
    }
}
