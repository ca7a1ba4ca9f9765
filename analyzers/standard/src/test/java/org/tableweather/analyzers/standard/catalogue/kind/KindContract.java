package org.tableweather.analyzers.standard.catalogue.kind;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.analyzers.standard.catalogue.draft.Held;

/** What every pooled kind keeps beside the contract of all analyzers. */
abstract class KindContract extends AnalyzerContract<KindSummary> {

    /** Twelve rooms, five sessions each, of twenty trials, from the truth. */
    abstract KindLeague league();

    /** Slope of the outcome that is answered when none is asked for, per 10 %RH. */
    abstract double slope();

    @Override
    protected List<Example> examples() {
        return league().drawn(7, 4, 12, 6).stream()
                .map(held -> new Example(held.session(), held.trials()))
                .toList();
    }

    Analysis analysed(List<Held> pool, Map<String, String> set) {
        return Held.analysed(analyzer(), pool, set);
    }

    Estimated estimated(List<Held> pool, Map<String, String> set) {
        Analysis analysis = analysed(pool, set);
        assertThat(analysis).isInstanceOf(Estimated.class);
        return (Estimated) analysis;
    }

    Declined declined(List<Held> pool, Map<String, String> set) {
        Analysis analysis = analysed(pool, set);
        assertThat(analysis).isInstanceOf(Declined.class);
        return (Declined) analysis;
    }

    static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(estimate -> estimate.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Four standard errors: missed once in 16,000 draws. */
    @Test
    void recoversTheTruth() {
        Estimated answer = estimated(league().drawn(12, 5, 20, 3), Map.of("shape", "linear"));

        Estimate humidity = estimate(answer, "humidity");
        assertThat(Math.abs(humidity.value() - slope())).isLessThan(4 * humidity.standardError());
        assertThat(answer.sentence()).startsWith("From ").doesNotContain("chance");
        assertThat(answer.curve()).isNotEmpty();
        assertThat(answer.plots())
                .singleElement()
                .satisfies(plot -> assertThat(plot.series()).hasSize(3 + 12));
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Invented data"));
    }

    @Test
    void declinesThreeTrialsKindly() {
        Declined none = declined(league().drawn(1, 1, 3, 3), Map.of());

        assertThat(none.reason()).isEqualTo(Reason.TOO_FEW_RECORDS);
        assertThat(none.detail()).containsAnyOf("add trials", "at least");
    }

    @Test
    void declinesTrialsOfAnotherShot() {
        Declined none = declined(league().drawn(2, 5, 8, 3), Map.of("shot", "none-such"));

        assertThat(none.reason()).isEqualTo(Reason.NOT_APPLICABLE);
        assertThat(none.detail()).contains("none-such", "test-shot");
    }

    @Test
    void saysThatTheCurveIsTheSessionsRange() {
        Estimated answer = estimated(league().drawn(6, 5, 8, 3), Map.of("curve_from_pct", "10", "curve_to_pct", "90"));

        assertThat(answer.parameters()).containsEntry("curve_from_pct", "10").containsEntry("curve_to_pct", "90");
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("The curve reaches beyond the data"));
    }
}
