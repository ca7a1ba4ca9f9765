package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * How the cue ball's departure from the line of the cue changes with humidity. In the model of an end mass,
 * {@code tan α = 2.5 β√(1 − β²)/(1 + M/m + 2.5(1 − β²))}, β the tip offset over the ball's radius, M over m the ball's mass over
 * the effective mass of the cue's end: no climate enters, so a change points to tip, chalk, or the cloth's curve.
 */
public final class Deflection extends PooledKind {

    private static final Outcome SIZE = new Outcome(
            "deflection_size_deg",
            "deflection",
            "deg",
            "°",
            2,
            "the cue ball leaves the line of the cue less when damp, more when dry",
            "the cue ball leaves the line of the cue more when damp, less when dry",
            "deflection_angle_deg",
            Reading.column(trial -> Math.abs(trial.deflectionAngleDeg())));

    private static final Outcome PER_OFFSET = new Outcome(
            "deflection_per_offset",
            "deflection per millimetre of tip offset",
            "deg/mm",
            "°/mm",
            3,
            "the cue ball leaves the line of the cue less when damp, more when dry",
            "the cue ball leaves the line of the cue more when damp, less when dry",
            "deflection_angle_deg and tip_offset_mm",
            Deflection::perOffset);

    private static final Outcome SIGNED = new Outcome(
            "deflection_angle_deg",
            "deflection as logged",
            "deg",
            "°",
            2,
            "the logged angle falls when damp",
            "the logged angle rises when damp",
            "deflection_angle_deg",
            Reading.column(Trial::deflectionAngleDeg));

    /** What is asked of it. */
    static final KindDefinition DEFINITION = new KindDefinition(
            Kind.DEFLECTION,
            List.of(SIZE, PER_OFFSET, SIGNED),
            List.of(PER_OFFSET),
            List.of(
                    KindCovariate.approachSpeed(3),
                    KindCovariate.sideSpin(),
                    new KindCovariate(
                            "tip_offset_mm",
                            "tip.offset",
                            "tip offset 14 mm to either side",
                            "per mm",
                            "change of the mean %s with the size of the tip's sideways offset, from 14 mm",
                            Reading.column(trial -> Math.abs(trial.tipOffsetMm()))
                                    .from(14))));

    // an offset of less than a millimetre divides noise by nothing
    private static double perOffset(SessionRecord session, Trial trial) {
        double offset = Math.abs(trial.tipOffsetMm());
        return offset >= 1 ? Math.abs(trial.deflectionAngleDeg()) / offset : Double.NaN;
    }

    /** Holds no state. */
    public Deflection() {
        super(
                DEFINITION,
                new KindInfo(
                        "deflection",
                        "1.1.1",
                        "Cue-ball deflection and humidity",
                        "Does side spin push the cue ball off the line of the cue more, or less, when it is damp?",
                        "Deflection is the angle between the cue ball's path and the line of the cue, degrees. As a rule its"
                                + " size is taken, so that attempts with the tip on either side pool: half the difference"
                                + " of both sides is free of a guide that is not quite straight, and so is the mean size"
                                + " when both sides are shot alike. Model of an end mass: tan α = 2.5 β√(1 − β²)/(1 + M/m +"
                                + " 2.5 (1 − β²)), β the offset over the radius: the climate is not in it.",
                        List.of(
                                "The angle is large beside its scatter: the size of an angle near zero is biased upwards.",
                                "For deflection_angle_deg: the sign is as logged, and all attempts have the tip on one side.",
                                "Tip offset is stated without an error that follows the climate; offsets below 1 mm are left out"
                                        + " of deflection_per_offset.",
                                "One cue and one tip in a room; the cue is level, and fast enough not to curve on the way."),
                        List.of("deflection_angle_deg", "tip_offset_mm", "approach_speed_mps", "side_spin_rps"),
                        List.of("Cross2008", "Shepard2001", "CommonPractice")));
    }
}
