package org.tableweather.release;

import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.table.TrialColumn;

/**
 * A number that a trial may have, NaN when it has not.
 *
 * @param name of its column
 * @param unit UCUM code
 * @param value from a trial
 */
record TrialNumber(String name, String unit, ToDoubleFunction<Trial> value) {
    static final String CLIMATE_TEMP_C = "climate_temp_c";
    static final String CLIMATE_RH_PCT = "climate_rh_pct";

    private static final Set<String> SPOT = Set.of("temp_c", "rh_pct");

    /** All of them, in the order of {@link Trial}'s components. */
    static final List<TrialNumber> ALL = List.of(
            of(TrialColumn.TEMP_C, Trial::tempC),
            of(TrialColumn.RH_PCT, Trial::rhPct),
            of(TrialColumn.APPROACH_ANGLE_DEG, Trial::approachAngleDeg),
            of(TrialColumn.APPROACH_SPEED_MPS, Trial::approachSpeedMps),
            of(TrialColumn.SIDE_SPIN_RPS, Trial::sideSpinRps),
            of(TrialColumn.ROLL_RATIO, Trial::rollRatio),
            of(TrialColumn.TIP_OFFSET_MM, Trial::tipOffsetMm),
            of(TrialColumn.REBOUND_ANGLE_DEG, Trial::reboundAngleDeg),
            of(TrialColumn.REBOUND_SPEED_MPS, Trial::reboundSpeedMps),
            of(TrialColumn.FINAL_REBOUND_ANGLE_DEG, Trial::finalReboundAngleDeg),
            of(TrialColumn.LANDING_OFFSET_DIA, Trial::landingOffsetDia),
            of(TrialColumn.RUN_OUT_M, Trial::runOutM),
            of(TrialColumn.RUN_OUT_LENGTHS, Trial::runOutLengths),
            of(TrialColumn.OBJECT_ANGLE_DEG, Trial::objectAngleDeg),
            of(TrialColumn.DEFLECTION_ANGLE_DEG, Trial::deflectionAngleDeg),
            of(TrialColumn.HOP_HEIGHT_MM, Trial::hopHeightMm),
            of(TrialColumn.SPREAD_NEAREST_MM, Trial::spreadNearestMm),
            of(TrialColumn.CUE_BALL_TRAVEL_M, Trial::cueBallTravelM),
            new TrialNumber(CLIMATE_TEMP_C, "Cel", trial -> trial.climate().tempC()),
            new TrialNumber(CLIMATE_RH_PCT, "%", trial -> trial.climate().rhPct()),
            of(TrialColumn.APPROACH_ANGLE_U_DEG, t -> t.uncertainty().approachAngleUDeg()),
            of(TrialColumn.APPROACH_SPEED_U_MPS, t -> t.uncertainty().approachSpeedUMps()),
            of(TrialColumn.REBOUND_ANGLE_U_DEG, t -> t.uncertainty().reboundAngleUDeg()),
            of(TrialColumn.REBOUND_SPEED_U_MPS, t -> t.uncertainty().reboundSpeedUMps()),
            of(TrialColumn.FINAL_REBOUND_ANGLE_U_DEG, t -> t.uncertainty().finalReboundAngleUDeg()),
            of(TrialColumn.LANDING_OFFSET_U_DIA, t -> t.uncertainty().landingOffsetUDia()),
            of(TrialColumn.RUN_OUT_U_M, t -> t.uncertainty().runOutUM()),
            of(TrialColumn.RUN_OUT_U_LENGTHS, t -> t.uncertainty().runOutULengths()),
            of(TrialColumn.OBJECT_ANGLE_U_DEG, t -> t.uncertainty().objectAngleUDeg()),
            of(TrialColumn.DEFLECTION_ANGLE_U_DEG, t -> t.uncertainty().deflectionAngleUDeg()),
            of(TrialColumn.HOP_HEIGHT_U_MM, t -> t.uncertainty().hopHeightUMm()),
            of(TrialColumn.SPREAD_NEAREST_U_MM, t -> t.uncertainty().spreadNearestUMm()),
            of(TrialColumn.CUE_BALL_TRAVEL_U_M, t -> t.uncertainty().cueBallTravelUM()));

    /**
     * Whether analyses read it trial by trial, so that it is to be read fastest; the others, spot readings and stated
     * uncertainties, have few different values and are to be small.
     */
    boolean isScanned() {
        return !SPOT.contains(name) && !name.contains("_u_");
    }

    private static TrialNumber of(TrialColumn column, ToDoubleFunction<Trial> value) {
        return new TrialNumber(column.header(), column.unit(), value);
    }
}
