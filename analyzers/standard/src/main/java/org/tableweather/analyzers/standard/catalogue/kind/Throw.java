package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * How throw, the object ball's departure from the line of centres, changes with humidity. It is bounded by the friction of ball
 * on ball, {@code atan μ}, and below full slip by {@code tan θ = v_t/(7 v_n)} for equal, perfectly elastic balls.
 */
public final class Throw extends PooledKind {

    private static final Outcome ANGLE = new Outcome(
            "object_angle_deg",
            "throw",
            "deg",
            "°",
            2,
            "the object ball is thrown less when damp, more when dry",
            "the object ball is thrown more when damp, less when dry",
            "object_angle_deg",
            Reading.column(Trial::objectAngleDeg));

    /** What is asked of it. */
    static final KindDefinition DEFINITION = new KindDefinition(
            Kind.THROW,
            List.of(ANGLE),
            List.of(),
            List.of(
                    KindCovariate.approachAngle(30),
                    KindCovariate.approachSpeed(2),
                    KindCovariate.sideSpin(),
                    KindCovariate.rollRatio(),
                    KindCovariate.tipOffset(0)));

    /** Holds no state. */
    public Throw() {
        super(
                DEFINITION,
                new KindInfo(
                        "throw",
                        "1.1.1",
                        "Throw and humidity",
                        "Is the object ball thrown off its line more, or less, when it is damp?",
                        "Throw is object_angle_deg, the angle between the object ball's path and the line of centres at"
                                + " contact, in degrees: positive towards the side that the cue ball moves to. Friction of"
                                + " ball on ball bounds it: tan θ = min(μ, 2 v_t/(7 (1 + e) v_n)), v_t and v_n the"
                                + " tangential and normal speed at contact, e the restitution.",
                        List.of(
                                "The sign is the one above in every session of the shot; a shot cut to both sides needs one"
                                        + " shot id for each side.",
                                "The cut is the shot's own; where approach_angle_deg holds the cut, ask for it as a covariate.",
                                "Speed, spin and cut are alike at every climate, or are asked for as covariates: throw falls"
                                        + " with speed.",
                                "Balls are cleaned alike before each attempt: chalk and fingerprints change throw more than"
                                        + " any climate (common practice, no source)."),
                        List.of(
                                "object_angle_deg",
                                "approach_angle_deg",
                                "approach_speed_mps",
                                "side_spin_rps",
                                "roll_ratio",
                                "tip_offset_mm"),
                        List.of("Wallace1988", "AlciatorePhysics", "CommonPractice")));
    }
}
