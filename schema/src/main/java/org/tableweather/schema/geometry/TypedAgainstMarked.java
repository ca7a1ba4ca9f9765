package org.tableweather.schema.geometry;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.record.Trial;

/**
 * The figures of a trial that were both typed and marked, side by side.
 *
 * <p>Speeds are left out: the marks give means over whole legs, the columns mean the speed at the rail.
 */
public final class TypedAgainstMarked {

    private final TypedResolution resolution;

    /**
     * With the steps of the scales that were read.
     *
     * @param resolution {@link TypedResolution#BY_EYE} when nothing is known
     */
    public TypedAgainstMarked(TypedResolution resolution) {
        this.resolution = resolution;
    }

    /**
     * Compares column by column.
     *
     * @param trial as typed; what is NaN is not compared
     * @param path of the same trial
     * @return by column of {@code trials.csv}, in the order of the columns
     */
    public Map<String, Agreement> compare(Trial trial, PathReduction.Reduced path) {
        Map<String, Agreement> pairs = new LinkedHashMap<>();
        Optional<RailTouch> first = path.touches().stream().findFirst();
        angle(pairs, "approach_angle_deg", trial.approachAngleDeg(), first.flatMap(RailTouch::approachAngleDeg));
        angle(pairs, "rebound_angle_deg", trial.reboundAngleDeg(), first.flatMap(RailTouch::reboundAngleDeg));
        angle(pairs, "final_rebound_angle_deg", trial.finalReboundAngleDeg(), path.finalReboundAngleDeg());
        pair(
                pairs,
                "landing_offset_dia",
                trial.landingOffsetDia(),
                resolution.offsetDia(),
                path.landing().map(Landing::offsetDia));
        return pairs;
    }

    /** A typed angle carries a sign only if it is negative: a positive one may stand for either side of the normal. */
    private void angle(Map<String, Agreement> pairs, String column, double typed, Optional<Measured> marked) {
        Optional<Measured> comparable = marked.map(
                angle -> typed >= 0 ? new Measured(Math.abs(angle.value()), angle.standardUncertainty()) : angle);
        pair(pairs, column, typed, resolution.angleDeg(), comparable);
    }

    private static void pair(
            Map<String, Agreement> pairs, String column, double typed, double step, Optional<Measured> marked) {
        if (!Double.isNaN(typed) && marked.isPresent()) {
            pairs.put(column, Agreement.ofReading(typed, step, marked.get()));
        }
    }
}
