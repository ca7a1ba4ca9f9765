package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.analyzers.standard.catalogue.HumidityChoicesTest.assertWithin;
import static org.tableweather.analyzers.standard.catalogue.TraitLeague.estimate;

import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.spi.Plot.Mark;
import org.tableweather.analyzers.spi.Plot.Series;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.record.Trial;

/** What stands beside the pooled model; the truth that trials are drawn from is the expected value. */
class HumidityPartsTest {

    private static final List<Held> LEAGUE = InventedLeague.drawn(20, 6, 15, 8);

    private static int roomOf(Trial trial) {
        return Integer.parseInt(trial.session().substring("league/room-".length(), "league/room-".length() + 3));
    }

    /** A slope of −0.8 per 10 %RH, and something of the room. */
    private static List<Held> straight(List<Held> league, ToDoubleFunction<Trial> more) {
        Random random = new Random(21);
        return TraitLeague.angled(
                league,
                trial -> 36 - 0.08 * trial.climate().rhPct() + more.applyAsDouble(trial) + random.nextGaussian());
    }

    /** Hygrometers that read wrong by a constant of their own. */
    private static List<Held> misread(List<Held> league, double spreadPct) {
        double[] offsets = new Random(77)
                .doubles(40, -spreadPct * Math.sqrt(3), spreadPct * Math.sqrt(3))
                .toArray();
        return TraitLeague.moved(
                league,
                trial -> new TrialDraft(trial.session(), Integer.parseInt(trial.trial()))
                        .climate(trial.climate().tempC(), trial.climate().rhPct() + offsets[roomOf(trial)])
                        .angle(trial.finalReboundAngleDeg())
                        .build());
    }

    @Nested
    class WithinAndBetween {

        @Test
        void agreeWhereHygrometersAreRight() {
            Estimated answer = TraitLeague.estimated(straight(LEAGUE, trial -> 0), Map.of());

            assertWithin(answer, "humidity.within", -0.8);
            assertWithin(answer, "humidity.between", -0.8);
            assertWithin(answer, "humidity.between-within", 0);
            assertThat(answer.sentence()).contains(" on differences within rooms.");
            assertThat(answer.warnings()).noneMatch(warning -> warning.startsWith("Within rooms and between"));
            // between less within is what it says
            assertThat(estimate(answer, "humidity.between-within").value())
                    .isEqualTo(
                            estimate(answer, "humidity.between").value()
                                    - estimate(answer, "humidity.within").value(),
                            within(1e-9));
        }

        @Test
        void partWhereDampRoomsDifferInAnotherWay() {
            List<Held> league = straight(InventedLeague.drawn(20, 6, 15, 8), trial -> 0);
            // each room's hygrometer reads wrong by up to 20 %RH: the slope within is the same, that between is lost
            Estimated answer = TraitLeague.estimated(misread(league, 12), Map.of());

            assertWithin(answer, "humidity.within", -0.8);
            assertThat(estimate(answer, "humidity.between").value()).isGreaterThan(-0.5);
            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("Within rooms and between rooms the slope differs"));
            assertThat((double) answer.fit().get("betweenWithinPValue")).isLessThan(0.05);
        }

        @Test
        void needThreeRooms() {
            Estimated answer = TraitLeague.estimated(InventedLeague.drawn(2, 6, 20, 4), Map.of());

            assertThat(answer.estimates()).extracting(Estimate::name).doesNotContain("humidity.within");
        }
    }

    @Nested
    class Instruments {

        @Test
        void bringAFlattenedSlopeBack() {
            List<Held> league = misread(straight(InventedLeague.drawn(40, 1, 40, 3), trial -> 0), 5);
            Estimated answer = TraitLeague.estimated(
                    league, held -> TraitLeague.traits(85, 25, 5 * Math.sqrt(3), held.room()), Map.of());

            double naive = estimate(answer, "humidity").value();
            double calibrated = estimate(answer, "humidity.calibrated").value();
            // spread of true room means is 36/√12 = 10.4 %RH, of errors 5: the naive slope is about 0.81 of −0.8
            assertThat(naive).isGreaterThan(-0.75);
            assertThat(calibrated).isLessThan(naive);
            assertWithin(answer, "humidity.calibrated", -0.8);
            assertWithin(answer, "humidity.between.calibrated", -0.8);
            assertThat(estimate(answer, "humidity.calibrated").standardError())
                    .isGreaterThan(estimate(answer, "humidity").standardError());
            assertThat((double) answer.fit().get("hygrometerAccuracyRhPct")).isEqualTo(8.66, within(0.005));
        }

        @Test
        void changeNothingThatRestsOnDifferencesWithinRooms() {
            Estimated answer = TraitLeague.estimated(
                    straight(LEAGUE, trial -> 4 * Math.sin(roomOf(trial))),
                    held -> TraitLeague.traits(85, 25, 1, held.room()),
                    Map.of());

            assertThat(estimate(answer, "humidity.calibrated").value())
                    .isEqualTo(estimate(answer, "humidity").value(), within(0.02));
        }

        @Test
        void areLeftAloneWhenSomeDoNotStateTheirAccuracy() {
            Estimated answer = TraitLeague.estimated(
                    LEAGUE,
                    held -> held.room().endsWith("0") ? SessionTraits.UNKNOWN : TraitLeague.traits(85, 25, 2, "h"),
                    Map.of());

            assertThat(answer.warnings())
                    .anyMatch(warning ->
                            warning.startsWith("The hygrometer's accuracy is stated for 108 of 120 sessions"));
        }
    }

    @Nested
    class Subgroups {

        @Test
        void differWhereTheTruthDoes() {
            List<Held> league = straight(
                    LEAGUE,
                    trial -> roomOf(trial) % 2 == 0 ? 0.06 * (trial.climate().rhPct() - 50) : 0);
            Estimated answer = TraitLeague.estimated(
                    league,
                    held -> TraitLeague.aged(400, roomNumber(held) % 2 == 0 ? 1980 : 2540),
                    Map.of("subgroup", "table-size"));

            assertWithin(answer, "humidity.subgroup.1", -0.2);
            assertWithin(answer, "humidity.subgroup.3", -0.8);
            assertThat((double) answer.fit().get("subgroupPValue")).isLessThan(0.001);
            assertThat(answer.sentence()).contains("By table-size the slopes differ (p < 0.001).");
            Plot plot = answer.plots().stream()
                    .filter(each -> each.id().equals("subgroups"))
                    .findFirst()
                    .orElseThrow();
            assertThat(plot.series())
                    .extracting(Series::mark)
                    .containsExactly(Mark.BAND, Mark.LINE, Mark.BAND, Mark.LINE);
        }

        @Test
        void doNotDifferWhereTheTruthIsOne() {
            Estimated answer = TraitLeague.estimated(
                    straight(LEAGUE, trial -> 0),
                    held -> TraitLeague.traits(new double[] {90, 60, 0}[roomNumber(held) % 3], 25, 2, "h"),
                    Map.of("subgroup", "cloth-fibre", "curve", "spline"));

            // no wool at all is a blend too: two groups
            assertThat(answer.fit()).containsEntry("subgroupNumeratorDf", 1);
            assertThat((double) answer.fit().get("subgroupPValue")).isGreaterThan(0.001);
        }

        @Test
        void needTwoGroups() {
            Estimated answer = TraitLeague.estimated(LEAGUE, Map.of("subgroup", "ball-set-age"));

            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("No two groups by ball-set-age have 3 sessions each"));
        }

        private int roomNumber(Held held) {
            return Integer.parseInt(held.room().substring("league/room-".length()));
        }
    }

    @Nested
    class Bootstrap {

        @Test
        void givesIntervalsLikeThoseOfTheModelInALargePool() {
            Estimated answer = TraitLeague.estimated(LEAGUE, Map.of("bootstrap", "200", "seed", "4"));
            Estimate model = estimate(answer, "humidity");
            Estimate drawn = estimate(answer, "humidity.bootstrap");

            assertThat(drawn.value()).isEqualTo(model.value());
            // the deviation of 200 draws is known to 5 %
            assertThat(drawn.standardError()).isEqualTo(model.standardError(), within(0.25 * model.standardError()));
            assertThat(drawn.lower()).isLessThan(drawn.value());
            assertThat(drawn.upper()).isGreaterThan(drawn.value());
            assertThat(answer.fit()).containsEntry("bootstrapReplicates", 200);
            assertThat(TraitLeague.estimated(LEAGUE, Map.of("bootstrap", "200", "seed", "4")))
                    .isEqualTo(answer);
        }

        @Test
        void saysWhenItIsRough() {
            Estimated answer = TraitLeague.estimated(LEAGUE, Map.of("bootstrap", "5"));

            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("5 bootstrap replicates, fewer than 200"));
        }
    }

    @Nested
    class Diagnosis {

        @Test
        void tellsASessionThatLiesFarOff() {
            Estimated answer = TraitLeague.estimated(
                    straight(LEAGUE, trial -> trial.session().equals("league/room-004/s2") ? 25 : 0), Map.of());

            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("Sessions that lie more than 4 standard deviations off")
                            && warning.contains("league/room-004"));
        }

        @Test
        void tellsTheRoomThatMakesTheSlope() {
            List<Held> league = straight(
                    InventedLeague.drawn(8, 6, 15, 8),
                    trial -> roomOf(trial) == 5 ? -0.5 * (trial.climate().rhPct() - 50) : 0);
            Estimated answer = TraitLeague.estimated(league, Map.of());

            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("The slope, ")
                            && warning.contains(
                                    "moves by more than 2/√rooms of its standard error without: league/room-005"));
            Plot influence = answer.plots().stream()
                    .filter(each -> each.id().equals("influence"))
                    .findFirst()
                    .orElseThrow();
            // without the odd room the others' truth is left
            Series odd = influence.series().stream()
                    .filter(series -> series.name().equals("league/room-005"))
                    .findFirst()
                    .orElseThrow();
            assertThat(odd.y().get(0)).isEqualTo(-0.8, within(0.3));
        }

        @Test
        void tellsTrialsThatScatterUnlike() {
            Random random = new Random(1);
            List<Held> league = straight(LEAGUE, trial -> roomOf(trial) == 7 ? 6 * random.nextGaussian() : 0);
            Estimated answer = TraitLeague.estimated(league, Map.of());

            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("Trials do not scatter alike in all rooms")
                            && warning.contains("in league/room-007"));
            assertThat(TraitLeague.estimated(straight(LEAGUE, trial -> 0), Map.of())
                            .warnings())
                    .noneMatch(warning -> warning.startsWith("Trials do not scatter alike"));
        }

        @Test
        void drawsResidualsThatSumToNothingMuch() {
            Estimated answer = TraitLeague.estimated(straight(LEAGUE, trial -> 0), Map.of());
            Plot residuals = answer.plots().get(1);
            List<Double> all = residuals.series().stream()
                    .flatMap(series -> series.y().stream())
                    .toList();

            assertThat(all).hasSize(120);
            // session means of 15 trials of deviation 1 scatter by 0.26
            assertThat(all).allMatch(residual -> Math.abs(residual) < 1.3);
            assertThat(all.stream().mapToDouble(Double::doubleValue).average().orElseThrow())
                    .isEqualTo(0, within(0.05));
            Series normal = answer.plots().get(2).series().get(1);
            assertThat(normal.x()).isSorted();
            assertThat(normal.y()).isSorted().hasSize(120);
        }
    }

    @Test
    void theRobustSlopeFindsTheTruthToo() {
        Estimated answer = TraitLeague.estimated(straight(LEAGUE, trial -> 0), Map.of());

        assertWithin(answer, "humidity.robust", -0.8);
        assertThat(estimate(answer, "humidity.robust").df()).isBetween(2.0, 19.0);
    }
}
