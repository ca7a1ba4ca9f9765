package org.tableweather.analyzers.spi;

import java.util.function.ToDoubleFunction;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.table.TrialColumn;

/** A number that a trial may have, NaN when it has not; in the order of {@link Trial}'s components. */
public enum TrialNumber {
    TEMP_C(TrialColumn.TEMP_C, Trial::tempC),
    RH_PCT(TrialColumn.RH_PCT, Trial::rhPct),
    APPROACH_ANGLE_DEG(TrialColumn.APPROACH_ANGLE_DEG, Trial::approachAngleDeg),
    APPROACH_SPEED_MPS(TrialColumn.APPROACH_SPEED_MPS, Trial::approachSpeedMps),
    SIDE_SPIN_RPS(TrialColumn.SIDE_SPIN_RPS, Trial::sideSpinRps),
    ROLL_RATIO(TrialColumn.ROLL_RATIO, Trial::rollRatio),
    TIP_OFFSET_MM(TrialColumn.TIP_OFFSET_MM, Trial::tipOffsetMm),
    REBOUND_ANGLE_DEG(TrialColumn.REBOUND_ANGLE_DEG, Trial::reboundAngleDeg),
    REBOUND_SPEED_MPS(TrialColumn.REBOUND_SPEED_MPS, Trial::reboundSpeedMps),
    FINAL_REBOUND_ANGLE_DEG(TrialColumn.FINAL_REBOUND_ANGLE_DEG, Trial::finalReboundAngleDeg),
    LANDING_OFFSET_DIA(TrialColumn.LANDING_OFFSET_DIA, Trial::landingOffsetDia),
    RUN_OUT_M(TrialColumn.RUN_OUT_M, Trial::runOutM),
    RUN_OUT_LENGTHS(TrialColumn.RUN_OUT_LENGTHS, Trial::runOutLengths),
    OBJECT_ANGLE_DEG(TrialColumn.OBJECT_ANGLE_DEG, Trial::objectAngleDeg),
    DEFLECTION_ANGLE_DEG(TrialColumn.DEFLECTION_ANGLE_DEG, Trial::deflectionAngleDeg),
    HOP_HEIGHT_MM(TrialColumn.HOP_HEIGHT_MM, Trial::hopHeightMm),
    SPREAD_NEAREST_MM(TrialColumn.SPREAD_NEAREST_MM, Trial::spreadNearestMm),
    CUE_BALL_TRAVEL_M(TrialColumn.CUE_BALL_TRAVEL_M, Trial::cueBallTravelM),
    /** Temperature of the air that stands for the trial, °C. */
    CLIMATE_TEMP_C("climate_temp_c", "Cel", trial -> trial.climate().tempC()),
    /** Relative humidity of the air that stands for the trial, %. */
    CLIMATE_RH_PCT("climate_rh_pct", "%", trial -> trial.climate().rhPct()),
    APPROACH_ANGLE_U_DEG(
            TrialColumn.APPROACH_ANGLE_U_DEG, trial -> trial.uncertainty().approachAngleUDeg()),
    APPROACH_SPEED_U_MPS(
            TrialColumn.APPROACH_SPEED_U_MPS, trial -> trial.uncertainty().approachSpeedUMps()),
    REBOUND_ANGLE_U_DEG(
            TrialColumn.REBOUND_ANGLE_U_DEG, trial -> trial.uncertainty().reboundAngleUDeg()),
    REBOUND_SPEED_U_MPS(
            TrialColumn.REBOUND_SPEED_U_MPS, trial -> trial.uncertainty().reboundSpeedUMps()),
    FINAL_REBOUND_ANGLE_U_DEG(
            TrialColumn.FINAL_REBOUND_ANGLE_U_DEG, trial -> trial.uncertainty().finalReboundAngleUDeg()),
    LANDING_OFFSET_U_DIA(
            TrialColumn.LANDING_OFFSET_U_DIA, trial -> trial.uncertainty().landingOffsetUDia()),
    RUN_OUT_U_M(TrialColumn.RUN_OUT_U_M, trial -> trial.uncertainty().runOutUM()),
    RUN_OUT_U_LENGTHS(
            TrialColumn.RUN_OUT_U_LENGTHS, trial -> trial.uncertainty().runOutULengths()),
    OBJECT_ANGLE_U_DEG(
            TrialColumn.OBJECT_ANGLE_U_DEG, trial -> trial.uncertainty().objectAngleUDeg()),
    DEFLECTION_ANGLE_U_DEG(
            TrialColumn.DEFLECTION_ANGLE_U_DEG, trial -> trial.uncertainty().deflectionAngleUDeg()),
    HOP_HEIGHT_U_MM(TrialColumn.HOP_HEIGHT_U_MM, trial -> trial.uncertainty().hopHeightUMm()),
    SPREAD_NEAREST_U_MM(
            TrialColumn.SPREAD_NEAREST_U_MM, trial -> trial.uncertainty().spreadNearestUMm()),
    CUE_BALL_TRAVEL_U_M(
            TrialColumn.CUE_BALL_TRAVEL_U_M, trial -> trial.uncertainty().cueBallTravelUM());

    private final String column;
    private final String unit;
    private final ToDoubleFunction<Trial> value;

    TrialNumber(TrialColumn column, ToDoubleFunction<Trial> value) {
        this(column.header(), column.unit(), value);
    }

    TrialNumber(String column, String unit, ToDoubleFunction<Trial> value) {
        this.column = column;
        this.unit = unit;
        this.value = value;
    }

    /** Name of its column in the tables of a release, for most also in {@code trials.csv}: {@code rebound_angle_deg}. */
    public String column() {
        return column;
    }

    /** UCUM code of its unit. */
    public String unit() {
        return unit;
    }

    /** The number of a trial; NaN when it has none. */
    public double of(Trial trial) {
        return value.applyAsDouble(trial);
    }
}
