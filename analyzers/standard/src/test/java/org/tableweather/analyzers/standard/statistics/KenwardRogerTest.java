package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

/** Against R's pbkrtest 0.5.2 (golden/*_lmm.json), whose own fits are polished to 1e-8, and golden/unit_eval.json. */
class KenwardRogerTest {

    @ParameterizedTest
    @EnumSource(
            value = GoldenCase.class,
            names = {
                "SLEEP_INTERCEPT",
                "SLEEP_SLOPE",
                "SLEEP_UNCORRELATED",
                "MACHINES",
                "OATS",
                "OATS_FACTORS",
                "ORTHODONT"
            })
    void agreesWithR(GoldenCase each) {
        JsonNode expected =
                Golden.json(each.file).get("values").get(each.key + "_REML").get("kenward_roger");
        NestedFit fit = each.fit(Method.REML).withKenwardRoger().orElseThrow();
        List<JsonNode> df = new ArrayList<>();
        List<JsonNode> errors = new ArrayList<>();
        expected.get("df").forEach(df::add);
        expected.get("se").forEach(errors::add);

        for (int i = 0; i < df.size(); i++) {
            Quantity coefficient = fit.coefficient(i).orElseThrow();
            assertThat(Golden.relative(coefficient.df(), df.get(i).asDouble()))
                    .as("df %d: %s against %s", i, coefficient.df(), df.get(i))
                    .isLessThan(1e-6);
            assertThat(Golden.relative(
                            coefficient.standardError(), errors.get(i).asDouble()))
                    .as("standard error %d", i)
                    .isLessThan(1e-6);
        }
    }

    /** A correlation at its bound: 2.8 degrees of freedom where Satterthwaite's are 12.2. */
    @Test
    void agreesWithAnIndependentImplementationAtASingularFit() {
        JsonNode golden = Golden.json("unit_eval.json");
        JsonNode expected = golden.get("REML").get("optimum").get("KR");
        NestedFit plain =
                (NestedFit) NestedModel.withDefaults().withRandom(0, 1).fit(rooms(golden.get("trials")));
        NestedFit fit = plain.withKenwardRoger().orElseThrow();

        assertThat(plain.cautions()).contains(Caution.CORRELATION_AT_BOUND);
        for (int i = 0; i < 2; i++) {
            Quantity coefficient = fit.coefficient(i).orElseThrow();
            assertThat(coefficient.value())
                    .isEqualTo(plain.coefficient(i).orElseThrow().value());
            assertThat(Golden.relative(
                            coefficient.standardError(),
                            expected.get("se").get(i).asDouble()))
                    .isLessThan(1e-6);
            assertThat(Golden.relative(
                            coefficient.df(), expected.get("df").get(i).asDouble()))
                    .isLessThan(1e-6);
        }
        double[] row = {1, 1};
        assertThat(fit.inNewRoom(row).standardError())
                .isGreaterThan(fit.contrast(row).standardError());
        assertThat(fit.inNewRoom(row).df()).isEqualTo(plain.inNewRoom(row).df(), within(0.0));
    }

    @Test
    void isNotDefinedForTheFullLikelihood() {
        assertThat(GoldenCase.OATS.fit(Method.ML).withKenwardRoger()).isEmpty();
    }

    private static List<RoomSessions> rooms(JsonNode data) {
        Map<Integer, Map<Integer, MomentsBuilder>> rooms = new LinkedHashMap<>();
        for (int i = 0; i < data.get("y").size(); i++) {
            rooms.computeIfAbsent(data.get("room").get(i).asInt(), key -> new LinkedHashMap<>())
                    .computeIfAbsent(data.get("session").get(i).asInt(), key -> new MomentsBuilder(2))
                    .add(data.get("rh").get(i).asDouble(), data.get("y").get(i).asDouble());
        }
        List<RoomSessions> all = new ArrayList<>();
        rooms.forEach((key, sessions) -> all.add(new RoomSessions(
                "" + key, sessions.values().stream().map(MomentsBuilder::build).toList())));
        return all;
    }
}
