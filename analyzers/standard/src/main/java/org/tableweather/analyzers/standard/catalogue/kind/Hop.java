package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * How the height to which a ball leaves the cloth changes with humidity. A ball that leaves with vertical speed v rises by
 * {@code v²/(2g)}; one dropped from a height H rises to {@code e²H}, e the restitution of ball and bed.
 */
public final class Hop extends PooledKind {

    private static final Outcome HEIGHT = new Outcome(
            "hop_height_mm",
            "hop height",
            "mm",
            " mm",
            2,
            "the ball leaves the cloth lower when damp, higher when dry",
            "the ball leaves the cloth higher when damp, lower when dry",
            "hop_height_mm",
            Reading.column(Trial::hopHeightMm));

    private static final Outcome ROOT = new Outcome(
            "root_hop_height",
            "square root of the hop height",
            "√mm",
            " √mm",
            3,
            "bed and cloth give back less of the ball's speed when damp, more when dry",
            "bed and cloth give back more of the ball's speed when damp, less when dry",
            "hop_height_mm",
            Reading.column(trial -> trial.hopHeightMm() >= 0 ? Math.sqrt(trial.hopHeightMm()) : Double.NaN));

    /** What is asked of it. */
    static final KindDefinition DEFINITION = new KindDefinition(
            Kind.HOP,
            List.of(HEIGHT, ROOT),
            List.of(ROOT),
            List.of(
                    KindCovariate.approachSpeed(2),
                    new KindCovariate(
                            "rebound_speed_mps",
                            "rebound.speed",
                            "rebound speed 1 m/s",
                            "per m/s",
                            "change of the mean %s with the speed of leaving, from 1 m/s",
                            Reading.column(Trial::reboundSpeedMps).from(1))));

    /** Holds no state. */
    public Hop() {
        super(
                DEFINITION,
                new KindInfo(
                        "hop",
                        "1.1.1",
                        "Hop and humidity",
                        "Does a ball leave the cloth higher, or lower, when it is damp?",
                        "Hop height is hop_height_mm, the greatest height of the ball's lowest point over the cloth, in mm,"
                                + " 0 on the cloth. A ball that leaves with vertical speed v rises by h = v²/(2g), so the root"
                                + " of the height is in proportion to that speed; from a time t in the air h = g t²/8. One"
                                + " dropped from H rises to e²H, so with one drop the root is in proportion to e.",
                        List.of(
                                "The drop, or the speed and the rail, are the shot's own and alike at every climate, or are"
                                        + " asked for as covariates.",
                                "The height of the drop is not a column: a restitution needs it and is not computed here.",
                                "The camera is level with the cloth; a frame's time bounds the height: dh/h = 2 dt/t."),
                        List.of("hop_height_mm", "approach_speed_mps", "rebound_speed_mps"),
                        List.of("Coriolis1835", "AlciatorePhysics", "CommonPractice")));
    }
}
