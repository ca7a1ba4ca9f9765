package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;

/** What {@link PathPrediction} says of itself. */
final class PathInfo {

    private PathInfo() {}

    static AnalyzerInfo info() {
        return new AnalyzerInfo(
                "path-prediction",
                "1.0.0",
                "1",
                "How far a pattern drifts",
                "How far does the landing of a pattern over several rails move between two climates, and where do I aim instead?",
                "The rail of rail-model, fitted to all pairs of approach and rebound of the pool, meets the motion of a rigid ball"
                        + " that slides, rolls and spins: the way is followed from event to event in both climates and the landings"
                        + " are subtracted. What is not known is drawn: the rail's coefficients by their covariance, the room by how"
                        + " rooms differ (or, where it has pairs, by what these leave open), with Student's t on rooms less one"
                        + " degrees of freedom; the cloth from a triangle over the published ranges, its rolling from roll-outs of"
                        + " the room, or of at least three rooms, where there are some; sessions and the scatter of attempts"
                        + " beside the expected drift. Rail, room and cloth are the same in both climates. Bands are the 2.5 and 97.5 %"
                        + " points of the draws; fit.drift.error.firstOrder is the standard error to first order beside that of the"
                        + " draws. The change of aim, speed or side spin that brings the landing back is the smallest that does."
                        + " drift.rail.N adds up to the drift: rails change to the second climate one after the other, from either"
                        + " end, averaged. task=check-on-pool holds the landings of the pool against predictions from the other rooms"
                        + " alone, and against those of rebound-humidity.",
                List.of(
                        "Rigid ball and rails, true up to about 2.5 m/s across; no pockets, no air drag, a level bed, no other balls.",
                        "The ball rolls, without side spin, at the speed that the shot states, unless said otherwise.",
                        "The climate changes the rails alone; the cloth is the same in both climates.",
                        "All rails of a table are alike.",
                        "Rooms are like a sample of the rooms that the answer is meant for."),
                List.of(
                        "a pool to which rail-model fits no rail",
                        "a room that the pool does not have",
                        "a ball that in one climate meets other rails, or comes to rest before it lands",
                        "a pattern so near to an edge that most draws go elsewhere",
                        "for the check: fewer than three rooms with landings of the shot, or rooms without which there is no rail"),
                parameters(),
                List.of(
                        "session",
                        "trial",
                        "kind",
                        "shot",
                        "approach_angle_deg",
                        "approach_speed_mps",
                        "side_spin_rps",
                        "roll_ratio",
                        "rebound_angle_deg",
                        "rebound_speed_mps",
                        "landing_offset_dia",
                        "run_out_m",
                        "run_out_lengths",
                        "rails",
                        "temp_c",
                        "rh_pct"),
                List.of(
                        "Mathavan2010",
                        "Coriolis1835",
                        "LindstromBates1990",
                        "JCGM101",
                        "AlciatorePhysics",
                        "WpaEquipment"));
    }

    private static List<ParameterInfo> parameters() {
        return List.of(
                any(
                        PathQuestion.SHOT,
                        "id of a shot of the catalogue; when not set, the one over rails that landed most often in the pool",
                        "1",
                        ""),
                AskedClimate.temperature(PathQuestion.FROM_C, "first", 24),
                AskedClimate.humidity(PathQuestion.FROM_PCT, "first", 40),
                AskedClimate.temperature(PathQuestion.TO_C, "second", 24),
                AskedClimate.humidity(PathQuestion.TO_PCT, "second", 70),
                any(
                        PathQuestion.ROOM,
                        "key of a room of the pool, or its last part; when not set, a new room",
                        "1",
                        ""),
                any(
                        PathQuestion.START,
                        "where the ball starts, x,y in diamonds; when not set, as the shot has it",
                        "1",
                        ""),
                any(PathQuestion.AIM, "the point that it is sent at, x,y in diamonds; likewise", "1", ""),
                any(
                        PathQuestion.RAILS,
                        "the rails in order, of head, foot, near, far, separated by commas; when not set, the shot's, and"
                                + " for a typed start the first three that the ball meets",
                        "1",
                        ""),
                any(
                        PathQuestion.SPEED,
                        "speed at the start; when not set, such that the ball arrives at the first rail as the shot says, and"
                                + " 3 for a typed start",
                        "m/s",
                        ""),
                any(PathQuestion.SPIN, "side spin at the start, counter-clockwise from above", "1/s", "0"),
                any(PathQuestion.ROLL, "rolling spin over that of natural roll at the start", "1", "1"),
                any(
                        PathQuestion.TABLE,
                        "playing length, the width half of it; when not set, the room's, and 2540 for a new room",
                        "mm",
                        ""),
                HumidityMeasure.parameter("what is taken for humidity"),
                new ParameterInfo(
                        PathQuestion.IMPACT,
                        "which impact is taken",
                        "1",
                        "closed-form",
                        List.of("closed-form", PathQuestion.STEPPED)),
                any(
                        PathQuestion.DRAWS,
                        "draws of the band, " + PathQuestion.FEWEST_DRAWS + " to " + PathQuestion.MOST_DRAWS,
                        "1",
                        "10000"),
                any(PathQuestion.SEED, "of all that is drawn", "1", "1"),
                new ParameterInfo(
                        PathQuestion.TASK,
                        "whether to predict, or to hold the pool's landings against predictions",
                        "1",
                        PathQuestion.PREDICT,
                        List.of(PathQuestion.PREDICT, PathQuestion.CHECK)));
    }

    private static ParameterInfo any(String name, String meaning, String unit, String standard) {
        return new ParameterInfo(name, meaning, unit, standard, List.of());
    }
}
