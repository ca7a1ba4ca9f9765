package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.TraitLeague.estimate;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.CurvePoint;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.record.Trial;

/**
 * The whole way from trials to figures against R on the same trials, row by row: {@code golden/humidity/league.R} made
 * {@code league.json} from {@code league.csv}, which is invented.
 */
class ReboundHumidityAgainstRTest {

    private static final JsonNode R = json();
    private static final Map<String, Double> LENGTHS = new LinkedHashMap<>();
    private static final List<Held> LEAGUE = league();

    @Test
    void agreesByDefault() {
        Estimated answer = answer(Map.of());

        assertThat((double) answer.fit().get("criterion"))
                .isEqualTo(R.get("default").get("criterion").asDouble(), within(1e-6));
        assertTable(answer, "default", 1e-5, "intercept", "humidity", "humidity.squared", "temperature");
    }

    @Test
    void agreesByKenwardAndRoger() {
        Estimated answer = answer(Map.of("df_method", "kenward-roger"));

        assertTable(answer, "kenward_roger", 1e-4, "intercept", "humidity", "humidity.squared", "temperature");
    }

    @Test
    void agreesWithinAndBetweenRooms() {
        Estimated answer = answer(Map.of());
        JsonNode expected = R.get("within_between");

        assertEstimate(answer, "humidity.within", expected, 1, 1e-4);
        assertEstimate(answer, "humidity.between", expected, 2, 1e-4);
        Estimate difference = estimate(answer, "humidity.between-within");
        double t = difference.value() / difference.standardError();
        assertNear(t * t, expected.get("F"), 1e-4);
        assertNear(difference.df(), expected.get("df_difference"), 1e-4);
        assertNear((double) answer.fit().get("betweenWithinPValue"), expected.get("p"), 1e-4);
    }

    @Test
    void agreesOnSubgroups() {
        Estimated answer = TraitLeague.estimated(
                LEAGUE, held -> TraitLeague.aged(100, LENGTHS.get(held.room())), Map.of("subgroup", "table-size"));
        JsonNode expected = R.get("subgroup");

        assertNear((double) answer.fit().get("subgroupF"), expected.get("F"), 1e-4);
        assertThat(answer.fit())
                .containsEntry("subgroupNumeratorDf", expected.get("num").asInt());
        assertNear((double) answer.fit().get("subgroupDenominatorDf"), expected.get("den"), 1e-4);
        assertNear((double) answer.fit().get("subgroupPValue"), expected.get("p"), 1e-4);
        List<String> sizes = List.of("1981", "2235", "2540");
        for (int i = 0; i < sizes.size(); i++) {
            Estimate slope = estimate(answer, "humidity.subgroup." + (i + 1));
            JsonNode own = expected.get("slopes").get(sizes.get(i));
            assertNear(slope.value(), own.get("value"), 1e-4);
            assertNear(slope.standardError(), own.get("se"), 1e-4);
            assertNear(slope.df(), own.get("df"), 1e-4);
        }
    }

    @Test
    void agreesOnTheRobustSlope() {
        Estimate slope = estimate(answer(Map.of()), "humidity.robust");
        JsonNode expected = R.get("robust");

        assertNear(slope.value(), expected.get("value"), 1e-9);
        assertNear(slope.standardError(), expected.get("se"), 1e-9);
        assertNear(slope.df(), expected.get("df"), 1e-8);
    }

    /** Ours is of second order in each session's own spread, here half a percent: three digits are asked for. */
    @Test
    void agreesOverAbsoluteHumidity() {
        Estimated answer = answer(Map.of("humidity_measure", "absolute-humidity"));

        assertTable(answer, "absolute", 2e-3, "intercept", "humidity", "humidity.squared", "temperature");
    }

    /** The reference's own optimiser stops at some 1e-4, and wiggles are of second order in each session's spread. */
    @Test
    void agreesOnASpline() {
        Map<String, String> set = Map.of("curve", "spline", "curve_from_pct", "35", "curve_to_pct", "65");
        Estimated answer = answer(set);
        JsonNode expected = R.get("spline");

        // the line is one of mgcv's effective degrees of freedom of the smooth
        assertNear((double) answer.fit().get("curveDegreesOfFreedom"), expected.get("edf"), 1e-2);
        int compared = 0;
        for (CurvePoint point : answer.curve()) {
            for (int i = 0; i < expected.get("rh_pct").size(); i++) {
                if (point.rhPct() == expected.get("rh_pct").get(i).asDouble()) {
                    double error = expected.get("se").get(i).asDouble();
                    assertThat(point.mean())
                            .isEqualTo(expected.get("fit").get(i).asDouble(), within(0.01 * error));
                    compared++;
                }
            }
        }
        assertThat(compared).isEqualTo(7);
    }

    private static Estimated answer(Map<String, String> set) {
        return TraitLeague.estimated(LEAGUE, set);
    }

    private static void assertTable(Estimated answer, String key, double share, String... names) {
        for (int i = 0; i < names.length; i++) {
            assertEstimate(answer, names[i], R.get(key), i, share);
        }
    }

    /** Values to a share of their standard error, errors and degrees of freedom to the same share of themselves. */
    private static void assertEstimate(Estimated answer, String name, JsonNode expected, int row, double share) {
        Estimate found = estimate(answer, name);
        double error = expected.get("se").get(row).asDouble();
        assertThat(found.value())
                .as(name)
                .isEqualTo(expected.get("value").get(row).asDouble(), within(10 * share * error));
        assertThat(found.standardError()).as(name).isEqualTo(error, within(share * error));
        double df = expected.get("df").get(row).asDouble();
        assertThat(found.df()).as(name).isEqualTo(df, within(20 * share * df));
    }

    private static void assertNear(double actual, JsonNode expected, double share) {
        assertThat(actual).isEqualTo(expected.asDouble(), within(share * Math.abs(expected.asDouble())));
    }

    static List<Held> league() {
        Map<String, List<Trial>> sessions = new LinkedHashMap<>();
        Map<String, String> rooms = new LinkedHashMap<>();
        for (String line : text("league.csv").lines().skip(1).toList()) {
            String[] cells = line.split(",");
            rooms.put(cells[1], cells[0]);
            LENGTHS.put(cells[0], Double.parseDouble(cells[5]));
            sessions.computeIfAbsent(cells[1], key -> new ArrayList<>())
                    .add(new TrialDraft(cells[1], Integer.parseInt(cells[2]))
                            .climate(Double.parseDouble(cells[4]), Double.parseDouble(cells[3]))
                            .angle(Double.parseDouble(cells[6]))
                            .build());
        }
        List<Held> league = new ArrayList<>();
        sessions.forEach((session, trials) -> league.add(new Held(rooms.get(session), session, trials)));
        return league;
    }

    private static JsonNode json() {
        try {
            return new ObjectMapper().readTree(text("league.json"));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String text(String name) {
        String path = "/golden/humidity/" + name;
        try (InputStream in =
                Objects.requireNonNull(ReboundHumidityAgainstRTest.class.getResourceAsStream(path), path)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
