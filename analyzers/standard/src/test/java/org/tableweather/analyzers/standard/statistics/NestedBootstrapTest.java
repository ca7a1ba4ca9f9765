package org.tableweather.analyzers.standard.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.statistics.NestedBootstrap.Draws;
import org.tableweather.analyzers.standard.statistics.NestedFit.Quantity;
import org.tableweather.analyzers.standard.statistics.NestedModel.Method;
import org.tableweather.analyzers.standard.statistics.NestedModel.Sessions;

/** The truth that replicates are drawn from is the expected value. */
class NestedBootstrapTest {

    private static final double[][] SLOPE = {{0, 1}, {1, 0}};

    @Test
    void refitsScatterAsTheFitSaysTheyShould() {
        NestedModel model = NestedModel.withDefaults().withRandom(0, 1).with(Sessions.ALIKE);
        List<RoomSessions> rooms = GoldenCase.SLEEP_SLOPE.rooms();
        NestedFit fit = GoldenCase.SLEEP_SLOPE.fit(Method.REML);
        Draws draws = new NestedBootstrap(400, 7).run(model, fit, rooms, SLOPE);

        assertThat(draws.failed()).isZero();
        for (int i = 0; i < 2; i++) {
            Quantity truth = fit.contrast(SLOPE[i]);
            // balanced data: coefficients are unbiased and their variance is the fit's, so four Monte-Carlo errors
            // bound them
            double[] values = draws.values().get(i);
            double mean = Arrays.stream(values).average().orElseThrow();
            assertThat(mean).isEqualTo(truth.value(), within(4 * truth.standardError() / Math.sqrt(400)));
            assertThat(draws.deviation(i))
                    .isEqualTo(truth.standardError(), within(4 * truth.standardError() / Math.sqrt(800)));
            assertThat(draws.quantile(i, 0.025)).isLessThan(truth.value() - truth.standardError());
            assertThat(draws.quantile(i, 0.975)).isGreaterThan(truth.value() + truth.standardError());
        }
    }

    @Test
    void drawsResidualAndRoomVariancesBack() {
        NestedModel model = NestedModel.withDefaults();
        List<RoomSessions> rooms = GoldenCase.OATS.rooms();
        NestedFit fit = GoldenCase.OATS.fit(Method.REML);
        Draws draws = new NestedBootstrap(300, 3).run(model, fit, rooms, SLOPE);

        // the slope lies within sessions: its error is the residual's
        Quantity slope = fit.contrast(SLOPE[0]);
        assertThat(draws.deviation(0))
                .isEqualTo(slope.standardError(), within(4 * slope.standardError() / Math.sqrt(600)));
        Quantity intercept = fit.contrast(SLOPE[1]);
        assertThat(draws.deviation(1))
                .isEqualTo(intercept.standardError(), within(4 * intercept.standardError() / Math.sqrt(600)));
    }

    @Test
    void givesTheSameBitsEachTimeAndOthersForAnotherSeed() {
        NestedModel model = NestedModel.withDefaults();
        List<RoomSessions> rooms = GoldenCase.OATS.rooms();
        NestedFit fit = GoldenCase.OATS.fit(Method.REML);
        double[] first = new NestedBootstrap(20, 3)
                .run(model, fit, rooms, SLOPE)
                .values()
                .get(0);

        assertThat(new NestedBootstrap(20, 3)
                        .run(model, fit, rooms, SLOPE)
                        .values()
                        .get(0))
                .containsExactly(first);
        assertThat(new NestedBootstrap(20, 4)
                        .run(model, fit, rooms, SLOPE)
                        .values()
                        .get(0))
                .isNotEqualTo(first);
    }

    @Test
    void tellsOfEachReplicateAndEndsWhenItIsNotWantedAnyMore() {
        NestedModel model = NestedModel.withDefaults();
        List<RoomSessions> rooms = GoldenCase.OATS.rooms();
        NestedFit fit = GoldenCase.OATS.fit(Method.REML);
        List<Integer> heard = Collections.synchronizedList(new ArrayList<>());
        AtomicInteger made = new AtomicInteger();

        new NestedBootstrap(20, 3).run(model, fit, rooms, SLOPE, heard::add);
        assertThat(heard)
                .containsExactlyInAnyOrderElementsOf(
                        IntStream.range(0, 20).boxed().toList());

        assertThatThrownBy(() -> new NestedBootstrap(100_000, 3).run(model, fit, rooms, SLOPE, replicate -> {
                    made.incrementAndGet();
                    if (replicate >= 5) {
                        throw new CancellationException("enough");
                    }
                }))
                .isInstanceOf(CancellationException.class);
        assertThat(made).hasValueLessThan(1_000);
    }
}
