package org.tableweather.server.catalogue;

import static org.tableweather.server.catalogue.TrialField.count;
import static org.tableweather.server.catalogue.TrialField.made;
import static org.tableweather.server.catalogue.TrialField.number;
import static org.tableweather.server.catalogue.TrialField.text;
import static org.tableweather.server.catalogue.TrialField.time;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.tableweather.schema.record.OutcomeUncertainty;
import org.tableweather.schema.record.Trial;

/** The columns of a stored trial, in the order of the table, of {@link TrialRow} and of the CSV. */
enum TrialColumn {
    TRIAL(text(Trial::trial)),
    STARTED_AT(time(Trial::startedAt)),
    KIND(text(trial -> trial.kind().schemaName())),
    SHOT(text(Trial::shot)),
    BALL(text(Trial::ball)),
    TEMP_C(number(Trial::tempC)),
    RH_PCT(number(Trial::rhPct)),
    APPROACH_ANGLE_DEG(number(Trial::approachAngleDeg)),
    APPROACH_SPEED_MPS(number(Trial::approachSpeedMps)),
    SIDE_SPIN_RPS(number(Trial::sideSpinRps)),
    ROLL_RATIO(number(Trial::rollRatio)),
    TIP_OFFSET_MM(number(Trial::tipOffsetMm)),
    REBOUND_ANGLE_DEG(number(Trial::reboundAngleDeg)),
    REBOUND_SPEED_MPS(number(Trial::reboundSpeedMps)),
    FINAL_REBOUND_ANGLE_DEG(number(Trial::finalReboundAngleDeg)),
    LANDING_OFFSET_DIA(number(Trial::landingOffsetDia)),
    MADE(made(Trial::made)),
    RAILS(count(Trial::rails)),
    RUN_OUT_M(number(Trial::runOutM)),
    RUN_OUT_LENGTHS(number(Trial::runOutLengths)),
    OBJECT_ANGLE_DEG(number(Trial::objectAngleDeg)),
    DEFLECTION_ANGLE_DEG(number(Trial::deflectionAngleDeg)),
    HOP_HEIGHT_MM(number(Trial::hopHeightMm)),
    BALLS_MADE(count(Trial::ballsMade)),
    SPREAD_NEAREST_MM(number(Trial::spreadNearestMm)),
    CUE_BALL_TRAVEL_M(number(Trial::cueBallTravelM)),
    NOTE(text(Trial::note)),
    CLIMATE_TEMP_C(number(trial -> trial.climate().tempC())),
    CLIMATE_RH_PCT(number(trial -> trial.climate().rhPct())),
    CLIMATE_SOURCE(text(trial -> trial.climate().source().schemaName())),
    APPROACH_ANGLE_U_DEG(uncertainty(OutcomeUncertainty::approachAngleUDeg)),
    APPROACH_SPEED_U_MPS(uncertainty(OutcomeUncertainty::approachSpeedUMps)),
    REBOUND_ANGLE_U_DEG(uncertainty(OutcomeUncertainty::reboundAngleUDeg)),
    REBOUND_SPEED_U_MPS(uncertainty(OutcomeUncertainty::reboundSpeedUMps)),
    FINAL_REBOUND_ANGLE_U_DEG(uncertainty(OutcomeUncertainty::finalReboundAngleUDeg)),
    LANDING_OFFSET_U_DIA(uncertainty(OutcomeUncertainty::landingOffsetUDia)),
    RUN_OUT_U_M(uncertainty(OutcomeUncertainty::runOutUM)),
    RUN_OUT_U_LENGTHS(uncertainty(OutcomeUncertainty::runOutULengths)),
    OBJECT_ANGLE_U_DEG(uncertainty(OutcomeUncertainty::objectAngleUDeg)),
    DEFLECTION_ANGLE_U_DEG(uncertainty(OutcomeUncertainty::deflectionAngleUDeg)),
    HOP_HEIGHT_U_MM(uncertainty(OutcomeUncertainty::hopHeightUMm)),
    SPREAD_NEAREST_U_MM(uncertainty(OutcomeUncertainty::spreadNearestUMm)),
    CUE_BALL_TRAVEL_U_M(uncertainty(OutcomeUncertainty::cueBallTravelUM));

    private static final List<TrialColumn> ALL = List.of(values());

    private final String sqlName = name().toLowerCase(Locale.ROOT);
    private final String jsonName = camelCase(sqlName);
    private final boolean isUncertainty = sqlName.contains("_u_");
    private final TrialField field;

    TrialColumn(TrialField field) {
        this.field = field;
    }

    /** The name in SQL and CSV: {@code rebound_angle_deg}. */
    String sqlName() {
        return sqlName;
    }

    /** The name in JSON: {@code reboundAngleDeg}. */
    String jsonName() {
        return jsonName;
    }

    /** How its values are written. */
    TrialField field() {
        return field;
    }

    /** Whether it states the standard uncertainty of another column. */
    boolean isUncertainty() {
        return isUncertainty;
    }

    static List<TrialColumn> all() {
        return ALL;
    }

    /** All names with commas between. */
    static String sqlNames() {
        return sqlNames(ALL);
    }

    /** These names with commas between. */
    static String sqlNames(Collection<TrialColumn> columns) {
        return columns.stream().map(TrialColumn::sqlName).collect(Collectors.joining(", "));
    }

    private static TrialField uncertainty(ToDoubleFunction<OutcomeUncertainty> of) {
        return number(trial -> of.applyAsDouble(trial.uncertainty()));
    }

    private static String camelCase(String snake) {
        StringBuilder camel = new StringBuilder();
        for (String word : snake.split("_")) {
            camel.append(camel.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
        }
        return camel.toString();
    }
}
