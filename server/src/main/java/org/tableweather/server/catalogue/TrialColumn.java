package org.tableweather.server.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The columns of a stored trial, in the order of the table, of COPY and of the CSV. */
enum TrialColumn {
    TRIAL,
    STARTED_AT,
    KIND,
    SHOT,
    BALL,
    TEMP_C,
    RH_PCT,
    APPROACH_ANGLE_DEG,
    APPROACH_SPEED_MPS,
    SIDE_SPIN_RPS,
    ROLL_RATIO,
    TIP_OFFSET_MM,
    REBOUND_ANGLE_DEG,
    REBOUND_SPEED_MPS,
    FINAL_REBOUND_ANGLE_DEG,
    LANDING_OFFSET_DIA,
    MADE,
    RAILS,
    RUN_OUT_M,
    RUN_OUT_LENGTHS,
    OBJECT_ANGLE_DEG,
    DEFLECTION_ANGLE_DEG,
    HOP_HEIGHT_MM,
    BALLS_MADE,
    SPREAD_NEAREST_MM,
    CUE_BALL_TRAVEL_M,
    NOTE,
    CLIMATE_TEMP_C,
    CLIMATE_RH_PCT,
    CLIMATE_SOURCE;

    private final String sqlName = name().toLowerCase(Locale.ROOT);
    private final String jsonName = camelCase(sqlName);

    /** The name in SQL and CSV: {@code rebound_angle_deg}. */
    String sqlName() {
        return sqlName;
    }

    /** The name in JSON: {@code reboundAngleDeg}. */
    String jsonName() {
        return jsonName;
    }

    static List<TrialColumn> all() {
        return List.of(values());
    }

    static String sqlNames() {
        return Arrays.stream(values()).map(TrialColumn::sqlName).collect(Collectors.joining(", "));
    }

    private static String camelCase(String snake) {
        StringBuilder camel = new StringBuilder();
        for (String word : snake.split("_")) {
            camel.append(camel.isEmpty() ? word : word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1));
        }
        return camel.toString();
    }
}
