package org.tableweather.analyzers.standard.catalogue.rooms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Trial;

class RoomSlopesTest {

    private static final double TIGHT = 1e-8;

    private static Analysis analysed(List<Held> league, Map<String, String> set) {
        return Held.analysed(new RoomSlopes(), league, set);
    }

    private static Estimated estimated(List<Held> league, Map<String, String> set) {
        return (Estimated) analysed(league, set);
    }

    private static Declined declined(List<Held> league, Map<String, String> set) {
        return (Declined) analysed(league, set);
    }

    private static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static Plot plot(Estimated answer, String id) {
        return answer.plots().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private static Series series(Plot plot, String name) {
        return plot.series().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Published effects and their variances as rooms: each has four sessions whose line has that slope and that error. */
    @Nested
    class PublishedEffectsAsRooms {

        private static final double[] HUMIDITY = {-1.5, -0.5, 0.5, 1.5};
        /** Orthogonal to a line over these humidities. */
        private static final double[] CONTRAST = {1, -1, -1, 1};

        private final Map<String, String> plain = Map.of("scatter", "own", "adjust", "none");

        /** Residual sum of squares 4 r² on 2 degrees of freedom over a spread of 5: variance 0.4 r². */
        private List<Held> rooms(GoldenFile golden) {
            double[] slopes = golden.numbers("yi");
            double[] variances = golden.numbers("vi");
            List<Held> rooms = new ArrayList<>();
            for (int room = 0; room < slopes.length; room++) {
                double apart = Math.sqrt(variances[room] / 0.4);
                for (int session = 0; session < HUMIDITY.length; session++) {
                    double angle = 32 + slopes[room] * HUMIDITY[session] + apart * CONTRAST[session];
                    Trial trial = RoomLeague.trial(1, 21, 50 + 10 * HUMIDITY[session], angle);
                    rooms.add(RoomLeague.held(RoomLeague.key(room), session, List.of(trial)));
                }
            }
            return rooms;
        }

        private Estimated answer(GoldenFile golden, String method) {
            Map<String, String> set = new HashMap<>(plain);
            set.put("method", method);
            return estimated(rooms(golden), set);
        }

        @ParameterizedTest
        @CsvSource({
            "dat-bcg, REML",
            "dat-bcg, PM",
            "dat-bcg, DL",
            "dat-normand1999, REML",
            "dat-normand1999, PM",
            "dat-normand1999, DL"
        })
        void givesThePublishedMeanAndHeterogeneity(String data, String method) {
            GoldenFile golden = GoldenFile.read("meta/" + data + ".properties");
            Estimated answer = answer(golden, method);
            Estimate mean = estimate(answer, "humidity");
            GoldenFile.assertNear(mean.value(), golden.number(method + ".mean"), TIGHT);
            GoldenFile.assertNear(mean.standardError(), golden.number(method + ".hk.se"), TIGHT);
            GoldenFile.assertNear(mean.lower(), golden.number(method + ".hk.ci_lb"), TIGHT);
            GoldenFile.assertNear(mean.upper(), golden.number(method + ".hk.ci_ub"), TIGHT);
            Estimate tau = estimate(answer, "rooms.sd");
            GoldenFile.assertNear(tau.value() * tau.value(), golden.number(method + ".tau2"), TIGHT);
            GoldenFile.assertNear(tau.lower() * tau.lower(), golden.numbers("qprofile")[0], TIGHT);
            GoldenFile.assertNear(tau.upper() * tau.upper(), golden.numbers("qprofile")[1], TIGHT);
            GoldenFile.assertNear(estimate(answer, "rooms.i-squared").value(), golden.number(method + ".I2"), TIGHT);
            GoldenFile.assertNear((double) answer.fit().get("q"), golden.number(method + ".QE"), TIGHT);
            Estimate next = estimate(answer, "humidity.new-room");
            GoldenFile.assertNear(next.lower(), golden.numbers(method + ".prediction")[0], TIGHT);
            GoldenFile.assertNear(next.upper(), golden.numbers(method + ".prediction")[1], TIGHT);
        }

        @ParameterizedTest
        @CsvSource({"dat-bcg, REML", "dat-bcg, DL", "dat-normand1999, REML", "dat-normand1999, DL"})
        void leavesEachRoomOut(String data, String method) {
            GoldenFile golden = GoldenFile.read("meta/" + data + ".properties");
            Plot plot = plot(answer(golden, method), "leave-one-out");
            double[] expected = golden.numbers("leave1out." + method + ".estimate");
            for (int room = 0; room < expected.length; room++) {
                double without = series(plot, RoomLeague.key(room)).y().get(0);
                GoldenFile.assertNear(without, expected[room], 1e-7);
            }
        }

        @ParameterizedTest
        @ValueSource(strings = {"dat-bcg", "dat-normand1999"})
        void testsAnUnevenFunnel(String data) {
            GoldenFile golden = GoldenFile.read("meta/" + data + ".properties");
            Estimated answer = answer(golden, "REML");
            Estimate uneven = estimate(answer, "asymmetry");
            GoldenFile.assertNear(uneven.value(), golden.number("egger.classical.bias"), TIGHT);
            GoldenFile.assertNear(uneven.standardError(), golden.number("egger.classical.bias_se"), TIGHT);
            GoldenFile.assertNear(
                    (double) answer.fit().get("asymmetryPValue"), golden.number("egger.classical.p"), TIGHT);
            GoldenFile.assertNear(
                    estimate(answer, "humidity.large-room").value(), golden.number("egger.classical.intercept"), TIGHT);
        }

        @Test
        void drawsForestAndFunnelOfTheSameEffects() {
            GoldenFile golden = GoldenFile.read("meta/dat-bcg.properties");
            Estimated answer = answer(golden, "REML");
            Series forest = series(plot(answer, "forest"), RoomLeague.key(6));
            double slope = golden.numbers("yi")[6];
            double error = Math.sqrt(golden.numbers("vi")[6]);
            // the lowest of the thirteen; normal quantile 1.959964 from any table
            assertThat(forest.x()).containsExactly(1.0);
            assertThat(forest.y().get(0)).isCloseTo(slope, within(TIGHT));
            assertThat(forest.upper().get(0)).isCloseTo(slope + 1.959964 * error, within(1e-6));
            Series funnel = series(plot(answer, "funnel"), RoomLeague.key(6));
            assertThat(funnel.x().get(0)).isCloseTo(slope, within(TIGHT));
            assertThat(funnel.y().get(0)).isCloseTo(error, within(TIGHT));
        }

        @Test
        void saysThatRoomsDoNotAgree() {
            Estimated answer = answer(GoldenFile.read("meta/dat-bcg.properties"), "REML");
            // Q = 152 on 12 degrees of freedom
            assertThat(answer.sentence())
                    .contains("damp tightens the rebound")
                    .contains("The rooms do not agree")
                    .contains("Over 13 rooms");
        }
    }

    /** The truth of the draw is the expected value. */
    @Nested
    class InventedRooms {

        @Test
        void recoversMeanAndSpreadOfManyRooms() {
            Estimated answer = estimated(RoomLeague.drawn(80, 8, 20, 0.4, 3), Map.of());
            Estimate mean = estimate(answer, "humidity");
            Estimate spread = estimate(answer, "rooms.sd");
            assertThat(mean.value()).isCloseTo(RoomLeague.SLOPE, within(3 * mean.standardError()));
            assertThat(0.4).isBetween(spread.lower(), spread.upper());
            assertThat(answer.rooms()).hasSize(80);
        }

        @Test
        void doesNotCallAgreeingRoomsDifferent() {
            Estimated answer = estimated(RoomLeague.drawn(40, 6, 20, 0, 8), Map.of());
            assertThat(estimate(answer, "rooms.sd").lower()).isZero();
            assertThat(answer.sentence()).contains("which does not prove that rooms agree");
        }

        /** Two sessions in every room, alike: one line's error is (v + s²/n) 2/(h₁ − h₂)², shared by all rooms. */
        @Test
        void twoSessionsAreEnoughWhenScatterIsShared() {
            List<Held> league = new ArrayList<>();
            for (Held held : RoomLeague.drawn(6, 2, 10, 0.3, 4)) {
                boolean dry = held.session().sessionKey().endsWith("s0");
                List<Trial> moved = new ArrayList<>();
                for (int i = 0; i < held.trials().size(); i++) {
                    double angle = held.trials().get(i).finalReboundAngleDeg();
                    moved.add(RoomLeague.trial(i + 1, 21, dry ? 40 : 60, angle));
                }
                league.add(RoomLeague.held(held.session().roomKey(), dry ? 0 : 1, moved));
            }
            Estimated answer = estimated(league, Map.of("adjust", "none"));
            List<Double> errors = plot(answer, "funnel").series().stream()
                    .filter(series -> series.mark() == Plot.Mark.POINTS)
                    .map(series -> series.y().get(0))
                    .toList();
            double session = answer.variance().get(1).sd().orElseThrow();
            double residual = answer.variance().get(2).sd().orElseThrow();
            double expected = Math.sqrt((session * session + residual * residual / 10) / 2);
            assertThat(errors).hasSize(6).allSatisfy(error -> assertThat(error).isCloseTo(expected, within(1e-9)));
            assertThat(declined(league, Map.of("adjust", "none", "scatter", "own"))
                            .detail())
                    .contains("hold 4 sessions");
        }

        @Test
        void namesRoomsWithoutASlope() {
            List<Held> league = new ArrayList<>(RoomLeague.drawn(6, 4, 10, 0.3, 4));
            league.add(RoomLeague.held("league/still", 0, List.of(RoomLeague.trial(1, 21, 50, 32))));
            Estimated answer = estimated(league, Map.of());
            assertThat(answer.rooms()).hasSize(6);
            assertThat(answer.warnings()).anyMatch(warning -> warning.contains("league/still"));
        }
    }

    @Nested
    class Declines {

        @Test
        void threeTrials() {
            List<Trial> trials = List.of(
                    RoomLeague.trial(1, 21, 40, 31.2),
                    RoomLeague.trial(2, 21, 50, 32),
                    RoomLeague.trial(3, 21, 60, 31));
            Declined none = declined(List.of(RoomLeague.held("league/one", 0, trials)), Map.of());
            assertThat(none.reason()).isEqualTo(Reason.TOO_FEW_RECORDS);
            assertThat(none.detail()).isNotBlank();
        }

        @Test
        void copiesOfOneRoom() {
            List<Held> copies = new ArrayList<>();
            for (Held held : RoomLeague.drawn(1, 5, 10, 0, 2)) {
                int session = copies.size();
                for (int room = 0; room < 3; room++) {
                    copies.add(RoomLeague.held(RoomLeague.key(room), session, held.trials()));
                }
            }
            assertThat(declined(copies, Map.of()).reason()).isEqualTo(Reason.DEGENERATE);
        }

        @Test
        void aShotNobodyPlayed() {
            Declined none = declined(RoomLeague.drawn(3, 3, 5, 0, 2), Map.of("shot", "other"));
            assertThat(none.reason()).isEqualTo(Reason.NOT_APPLICABLE);
            assertThat(none.detail()).contains("test-shot");
        }

        @Test
        void aResponseNobodyLogged() {
            Declined none = declined(RoomLeague.drawn(3, 3, 5, 0, 2), Map.of("response", "landing_offset_dia"));
            assertThat(none.detail()).contains("None of 45 trials").contains("landing_offset_dia");
        }
    }
}
