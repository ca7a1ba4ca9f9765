package org.tableweather.analyzers.standard.catalogue;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.standard.catalogue.InventedLeague.Held;
import org.tableweather.schema.record.Trial;

class HumidityGuardsTest {

    private static Estimated analysed(Predicate<Trial> kept) {
        List<Held> league = new ArrayList<>();
        for (Held held : InventedLeague.drawn(10, 5, 20, 2)) {
            league.add(new Held(
                    held.room(),
                    held.session(),
                    held.trials().stream().filter(kept).toList()));
        }
        return (Estimated) InventedLeague.analysed(league, Map.of());
    }

    @Test
    void findsNothingInASoundLeague() {
        assertThat(analysed(trial -> true).fit()).containsEntry("guards", List.of());
    }

    @Test
    void warnsOfMissingNumbersAndCitesItsSource() {
        Estimated answer = analysed(trial -> Integer.parseInt(trial.trial()) % 5 != 3);

        assertThat(answer.fit())
                .containsEntry("guards", List.of(Map.of("guard", "missing-numbers", "statistic", 200.0, "bound", 0.0)));
        assertThat(answer.warnings())
                .anyMatch(warning -> warning.startsWith("200 numbers missing among 800 numbered attempts")
                        && warning.contains("Remedy: "));
        assertThat(answer.references()).contains("CommonPractice");
    }

    /** Only attempts that rebound wider than 30 degrees are kept: the scatter ends sooner below. */
    @Test
    void warnsOfScatterThatIsCutOff() {
        Estimated answer = analysed(trial -> trial.finalReboundAngleDeg() > 30);

        assertThat(answer.warnings()).anyMatch(warning -> warning.contains("ends sooner below"));
        assertThat(answer.references()).contains("Fisher1930");
    }
}
