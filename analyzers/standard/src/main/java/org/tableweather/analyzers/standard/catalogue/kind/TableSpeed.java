package org.tableweather.analyzers.standard.catalogue.kind;

import java.util.List;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/**
 * Whether the cloth plays slower when damp: rolling resistance from roll-outs, air drag separated, over the way of the ball's
 * centre. Per attempt {@code μ = b v₀² / (g (e^(2bd) − 1))} with {@code b = ½ρC_d(πD²/4)/(7m/5)}; without air it is
 * {@code v₀²/(2gd)}.
 */
public final class TableSpeed extends PooledKind {

    private static final Outcome RESISTANCE = new Outcome(
            "rolling_resistance_permille",
            "rolling resistance",
            "‰",
            " ‰",
            3,
            "the cloth plays faster when damp, slower when dry",
            "the cloth plays slower when damp, faster when dry",
            "approach_speed_mps, a run-out without a rail, and the air",
            (session, trial) -> 1000 * RollOut.coefficient(session, trial));

    private static final Outcome TRAVEL = new Outcome(
            "run_out_m",
            "roll-out",
            "m",
            " m",
            3,
            "the cloth plays slower when damp, faster when dry",
            "the cloth plays faster when damp, slower when dry",
            "run_out_m, or run_out_lengths and the table's length",
            RollOut::travelM);

    /** What is asked of it. */
    static final KindDefinition DEFINITION = new KindDefinition(
            Kind.SPEED,
            List.of(RESISTANCE, TRAVEL),
            List.of(TRAVEL),
            List.of(
                    KindCovariate.approachSpeed(1),
                    KindCovariate.rollRatio(),
                    new KindCovariate(
                            "rails",
                            "rails",
                            "no rail",
                            "per rail",
                            "change of the mean %s with the number of rails touched",
                            Reading.column(TableSpeed::rails))));

    private static double rails(Trial trial) {
        return trial.rails() < 0 ? Double.NaN : trial.rails();
    }

    /** Holds no state. */
    public TableSpeed() {
        super(
                DEFINITION,
                new KindInfo(
                        "table-speed",
                        "1.1.1",
                        "Table speed and humidity",
                        "Does the cloth play slower when damp?",
                        "Rolling resistance μ, the deceleration by the cloth over g, in ‰, of each roll-out with a known speed:"
                                + " μ = b v₀²/(g (e^(2bd) − 1)), b = ½ρC_d(πD²/4)/(7m/5), so that the air's share is"
                                + " taken out; d is the way of the ball's centre: a table length counts the playing"
                                + " length less a ball's diameter. A larger μ is a slower cloth. Without a known speed"
                                + " the roll-out itself is pooled: a shorter one is a slower cloth, as long as the"
                                + " release is the same.",
                        List.of(
                                "approach_speed_mps is the speed of the rolling ball where the run-out begins.",
                                "Timings at gates have no column of their own: the speed from two gates is logged as"
                                        + " approach_speed_mps, where the run-out begins; times in contacts.csv (t_s) are not"
                                        + " read here.",
                                "For run_out_m: every ball of a room starts at the same speed, as from a ramp; rooms may"
                                        + " differ.",
                                "The ball rolls from the start; a stated roll_ratio more than 0.1 from 1 leaves the attempt"
                                        + " out of rolling_resistance_permille, and so does a touched rail or a way longer than the"
                                        + " table.",
                                "Air: drag coefficient 0.5 (from memory), density of the moist air at the trial's climate and"
                                        + " the room's altitude, sea level when it is not stated.",
                                "A ball of 163 g and 57.15 mm where the ball set does not say.",
                                "No attempt is left out because it reached a rail: leaving out the longest makes the cloth"
                                        + " seem slower; release from lower down instead.",
                                "The table is level, or attempts go both ways."),
                        List.of("run_out_m", "run_out_lengths", "approach_speed_mps", "rails", "roll_ratio"),
                        List.of("Mathavan2009", "Coriolis1835", "WpaEquipment", "HylandWexler1983", "CommonPractice")));
    }
}
