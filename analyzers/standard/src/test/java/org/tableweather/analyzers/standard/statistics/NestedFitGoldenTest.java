package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedFit.RoomEffect;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;

/** Fits of published data sets against 30-digit solutions, an independent implementation, and R. */
class NestedFitGoldenTest {

    private static final JsonNode DIGITS = Golden.json("lmm_30_digits.json").get("values");
    private static final JsonNode SMALL = Golden.json("small_lmm.json");

    static Stream<Arguments> inDigits() {
        return cases((each, method) -> DIGITS.has(digitsKey(each, method)));
    }

    static Stream<Arguments> inSmall() {
        return cases((each, method) -> SMALL.has(each.small + "_" + method));
    }

    static Stream<Arguments> inR() {
        return cases((each, method) -> !each.file.isEmpty());
    }

    @ParameterizedTest
    @MethodSource("inDigits")
    void agreesWithThe30DigitSolution(GoldenCase each, Method method) {
        JsonNode expected = DIGITS.get(digitsKey(each, method));
        NestedFit fit = each.fit(method);

        assertThat(fit.converged()).isTrue();
        assertThat(fit.criterion()).isEqualTo(expected.get("criterion").asDouble(), within(1e-9));
        assertRelative(fit.sigma2(), expected.get("sigma2"), 1e-9);
        for (int i = 0; i < expected.get("beta").size(); i++) {
            Quantity coefficient = fit.coefficient(i).orElseThrow();
            assertRelative(coefficient.value(), expected.get("beta").get(i), 1e-9);
            assertRelative(coefficient.standardError(), expected.get("se").get(i), 1e-9);
        }
        assertVariances(fit, expected);
    }

    private static void assertVariances(NestedFit fit, JsonNode expected) {
        JsonNode rooms = expected.get("room_vcov");
        double[][] covariance = fit.roomCovariance();
        for (int i = 0; i < covariance.length; i++) {
            for (int j = 0; j <= i; j++) {
                JsonNode entry = rooms.get(i + "," + j);
                if (entry == null) {
                    assertThat(covariance[i][j]).isZero();
                } else {
                    assertRelative(covariance[i][j], entry, 1e-9);
                }
            }
        }
        if (expected.get("session_vcov").isEmpty()) {
            assertThat(fit.sessionVariance()).isEmpty();
        } else {
            assertRelative(
                    fit.sessionVariance().getAsDouble(),
                    expected.get("session_vcov").get("0,0"),
                    1e-9);
        }
    }

    /** The other implementation's differences are good for some 1e-8 of a degree of freedom. */
    @ParameterizedTest
    @MethodSource("inSmall")
    void agreesWithAnIndependentImplementation(GoldenCase each, Method method) {
        JsonNode expected = SMALL.get(each.small + "_" + method);
        NestedFit fit = each.fit(method);

        assertThat(fit.criterion()).isEqualTo(expected.get("criterion").asDouble(), within(1e-9));
        for (int i = 0; i < expected.get("beta").size(); i++) {
            Quantity coefficient = fit.coefficient(i).orElseThrow();
            assertRelative(coefficient.value(), expected.get("beta").get(i), 1e-9);
            assertRelative(coefficient.standardError(), expected.get("se").get(i), 1e-9);
            assertRelative(coefficient.df(), expected.get("satterthwaite_df").get(i), 1e-8);
        }
        for (RoomEffect room : fit.rooms()) {
            JsonNode effects = expected.get("room_blup").get(room.key());
            for (int u = 0; u < effects.size(); u++) {
                assertRelative(room.effects()[u], effects.get(u), 1e-9);
            }
        }
        assertConditionalVariances(fit, expected);
    }

    private static void assertConditionalVariances(NestedFit fit, JsonNode expected) {
        for (int room = 0; room < expected.get("room_condvar").size(); room++) {
            double[][] variance = fit.rooms().get(room).variance();
            for (int u = 0; u < variance.length; u++) {
                assertRelative(
                        variance[u][u],
                        expected.get("room_condvar").get(room).get(u).get(u),
                        1e-9);
            }
        }
    }

    /** R's estimates are polished to a gradient of 1e-8, its degrees of freedom to 1e-7. */
    @ParameterizedTest
    @MethodSource("inR")
    void agreesWithR(GoldenCase each, Method method) {
        JsonNode expected = Golden.json(each.file).get("values").get(each.key + "_" + method);
        NestedFit fit = each.fit(method);

        assertThat(fit.criterion()).isEqualTo(expected.get("criterion").asDouble(), within(1e-8));
        List<JsonNode> df = new ArrayList<>();
        expected.get("satterthwaite").get("df").forEach(df::add);
        for (int i = 0; i < df.size(); i++) {
            assertRelative(fit.coefficient(i).orElseThrow().df(), df.get(i), 1e-6);
        }
        assertRoomsOfR(fit, expected.get("blup").get(each.roomGroup));
        if (!each.sessionGroup.isEmpty()) {
            assertSessionsOfR(each, fit, expected.get("blup").get(each.sessionGroup));
        }
    }

    private static void assertRoomsOfR(NestedFit fit, JsonNode expected) {
        int depth = fit.random().size();
        for (RoomEffect room : fit.rooms()) {
            JsonNode row = row(expected, room.key());
            for (int u = 0; u < depth; u++) {
                assertThat(room.effects()[u]).isEqualTo(row.get(u).asDouble(), within(1e-6 * scale(expected, u)));
                assertRelative(Math.sqrt(room.variance()[u][u]), row.get(depth + u), 1e-6);
            }
        }
    }

    private static void assertSessionsOfR(GoldenCase each, NestedFit fit, JsonNode expected) {
        String data = each == GoldenCase.MACHINES ? "data/machines.csv" : "data/oats.csv";
        String session = each == GoldenCase.MACHINES ? "Machine" : "Variety";
        for (RoomEffect room : fit.rooms()) {
            List<String> names = Golden.rows(data).stream()
                    .filter(row -> row.get(each.roomGroup).equals(room.key()))
                    .map(row -> row.get(session))
                    .distinct()
                    .toList();
            for (int s = 0; s < names.size(); s++) {
                JsonNode row = row(expected, names.get(s) + ":" + room.key());
                assertThat(room.sessions().get(s).effect())
                        .isEqualTo(row.get(0).asDouble(), within(1e-6 * scale(expected, 0)));
                assertRelative(Math.sqrt(room.sessions().get(s).variance()), row.get(1), 1e-6);
            }
        }
    }

    private static JsonNode row(JsonNode blup, String name) {
        for (int i = 0; i < blup.get("rows").size(); i++) {
            if (blup.get("rows").get(i).asText().equals(name)) {
                return blup.get("data").get(i);
            }
        }
        throw new AssertionError("no " + name + " in " + blup.get("rows"));
    }

    /** Largest magnitude in a column: effects near zero are no better known than the others. */
    private static double scale(JsonNode blup, int column) {
        double largest = 0;
        for (JsonNode row : blup.get("data")) {
            largest = Math.max(largest, Math.abs(row.get(column).asDouble()));
        }
        return largest;
    }

    private static String digitsKey(GoldenCase each, Method method) {
        return each.digits + "_" + method + (each == GoldenCase.GRAVITY ? "_unbalanced" : "");
    }

    private static Stream<Arguments> cases(java.util.function.BiPredicate<GoldenCase, Method> wanted) {
        return Stream.of(GoldenCase.values())
                .flatMap(each -> Stream.of(Method.values())
                        .filter(method -> wanted.test(each, method))
                        .map(method -> Arguments.of(each, method)));
    }

    private static void assertRelative(double actual, JsonNode expected, double bound) {
        assertThat(Golden.relative(actual, expected.asDouble()))
                .as("%s against %s", actual, expected.asText())
                .isLessThan(bound);
    }
}
