package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.ServiceLoader;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.VarianceComponent;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.record.Trial;

/** Pools drawn from a stated truth (see {@link InventedLeague}); the truth is the expected value. */
class ReboundHumidityTest {

    @Test
    void isFoundByTheServiceLoader() {
        List<String> ids = new ArrayList<>();
        for (Analyzer<?> analyzer : ServiceLoader.load(Analyzer.class)) {
            ids.add(analyzer.info().id());
        }

        assertThat(ids).contains("rebound-humidity");
    }

    @Test
    void recoversTheTruthOfALargePool() {
        Estimated answer = estimated(InventedLeague.drawn(100, 10, 20, 11), Map.of());

        assertWithin(answer, "intercept", 32);
        assertWithin(answer, "humidity", InventedLeague.SLOPE);
        assertWithin(answer, "humidity.squared", 0.05);
        assertWithin(answer, "temperature", 0.1);
        // standard errors of the standard deviations are about sd / sqrt(2 df): 0.07, 0.03, 0.015, 0.01
        assertThat(deviation(answer, "room.intercept")).isEqualTo(1, within(0.3));
        assertThat(deviation(answer, "room.humidity")).isEqualTo(0.25, within(0.12));
        assertThat(deviation(answer, "session.intercept")).isEqualTo(0.5, within(0.08));
        assertThat(deviation(answer, "residual")).isEqualTo(2, within(0.05));
        assertThat(answer.sentence()).contains("damp tightens the rebound");
    }

    @Test
    void givesTheSameBitsWhateverTheOrderOfRowsAndSessions() {
        List<Held> league = InventedLeague.drawn(9, 4, 15, 3);
        List<Held> shuffled = new ArrayList<>();
        Random random = new Random(5);
        for (Held held : league) {
            List<Trial> trials = new ArrayList<>(held.trials());
            Collections.shuffle(trials, random);
            shuffled.add(new Held(held.room(), held.session(), trials));
        }
        Collections.shuffle(shuffled, random);

        assertThat(estimated(shuffled, Map.of())).isEqualTo(estimated(league, Map.of()));
    }

    static Estimated estimated(List<Held> league, Map<String, String> set) {
        Analysis analysis = InventedLeague.analysed(league, set);
        assertThat(analysis).isInstanceOf(Estimated.class);
        return (Estimated) analysis;
    }

    static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(estimate -> estimate.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    static double deviation(Estimated answer, String name) {
        return answer.variance().stream()
                .filter(component -> component.name().equals(name))
                .map(VarianceComponent::sd)
                .findFirst()
                .orElseThrow()
                .getAsDouble();
    }

    /** Four standard errors: missed once in 16,000 draws. */
    private static void assertWithin(Estimated answer, String name, double truth) {
        Estimate estimate = estimate(answer, name);
        assertThat(estimate.value()).as(name).isEqualTo(truth, within(4 * estimate.standardError()));
    }
}
