package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;
import org.tableweather.analyzers.standard.statistics.NestedModel.Sessions;

/** Against lme4, refitted without each cluster; values and their source in golden/leave_room_out.json. */
class RoomPredictionTest {

    private static final JsonNode GOLDEN = Golden.json("leave_room_out.json");
    private static final NestedModel MODEL = NestedModel.withDefaults().with(Sessions.ALIKE);

    private static List<RoomSessions> sleepers(boolean bent) {
        return Golden.rooms("data/sleepstudy.csv", row -> row.get("Subject"), row -> "", row -> {
            double days = Golden.number(row, "Days");
            double reaction = Golden.number(row, "Reaction");
            return bent ? new double[] {days, days * days, reaction} : new double[] {days, reaction};
        });
    }

    private static void meets(String name, List<RoomSessions> rooms) {
        JsonNode golden = GOLDEN.path(name);
        RoomPrediction found = RoomPrediction.of(MODEL, rooms).orElseThrow();
        Map<String, Double> squares = new HashMap<>();
        for (int room = 0; room < rooms.size(); room++) {
            squares.put(rooms.get(room).key(), found.squares()[room]);
        }
        double[] expected = Golden.numbers(golden.path("sse"));
        assertThat(squares).hasSize(expected.length);
        for (int cluster = 0; cluster < expected.length; cluster++) {
            String key = golden.path("clusters").path(cluster).asText();
            assertThat(Golden.relative(squares.get(key), expected[cluster])).isLessThan(1e-9);
        }
        near(found.rootMeanSquare(), golden.path("rmse"));
        near(found.meanOfRooms(), golden.path("mean_cluster_mse"));
        near(found.standardErrorOfRooms(), golden.path("se_cluster_mse"));
    }

    private static void near(double actual, JsonNode expected) {
        assertThat(Golden.relative(actual, expected.asDouble())).isLessThan(1e-10);
    }

    @Test
    void meetsLme4OnAStraightLine() {
        meets("sleepstudy.lmm_linear", sleepers(false));
    }

    @Test
    void meetsLme4OnABentLine() {
        meets("sleepstudy.lmm_quad", sleepers(true));
    }

    @Test
    void meetsLme4OnGroups() {
        meets("orthodont.lmm_age_x_sex", GoldenCase.ORTHODONT.rooms());
    }

    /** Balanced data: the weights of rooms, and so the method, do not matter. */
    @Test
    void doesNotDependOnTheMethodInBalancedData() {
        RoomPrediction full =
                RoomPrediction.of(MODEL.with(Method.ML), sleepers(false)).orElseThrow();

        near(full.rootMeanSquare(), GOLDEN.path("sleepstudy.lmm_linear").path("rmse"));
    }

    @Test
    void givesNothingForOneRoom() {
        assertThat(RoomPrediction.of(MODEL, sleepers(false).subList(0, 1))).isEmpty();
    }

    @Test
    void equalsByContent() {
        RoomPrediction one = RoomPrediction.of(MODEL, sleepers(false)).orElseThrow();
        RoomPrediction same = RoomPrediction.of(MODEL, sleepers(false)).orElseThrow();

        assertThat(one).isEqualTo(same).hasSameHashCodeAs(same).hasToString(same.toString());
        assertThat(one).isNotEqualTo(RoomPrediction.of(MODEL, sleepers(true)).orElseThrow());
        assertThat(one.trials()).containsOnly(10);
    }
}
