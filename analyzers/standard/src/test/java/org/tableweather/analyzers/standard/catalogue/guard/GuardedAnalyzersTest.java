package org.tableweather.analyzers.standard.catalogue.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasures;
import org.tableweather.analyzers.standard.catalogue.agreement.Repeatability;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomComparison;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomLeague;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomSlopes;
import org.tableweather.schema.record.Trial;

/** Analyzers that compare rooms and measures of humidity warn of a bent pool, and are silent about a sound one. */
class GuardedAnalyzersTest {

    private static final int ROOMS = 10;
    private static final int SESSIONS = 5;

    static Stream<Named<Analyzer<?>>> analyzers() {
        return Stream.of(new RoomSlopes(), new RoomComparison(), new Repeatability(), new HumidityMeasures())
                .map(analyzer -> Named.of(analyzer.info().id(), analyzer));
    }

    private static List<Held> league() {
        return RoomLeague.drawn(ROOMS, SESSIONS, 40, 0.25, 2);
    }

    private static List<Held> kept(Predicate<Trial> which) {
        List<Held> league = new ArrayList<>();
        for (Held held : league()) {
            league.add(new Held(
                    held.session(), held.trials().stream().filter(which).toList()));
        }
        return league;
    }

    private static Estimated analysed(Analyzer<?> analyzer, List<Held> league) {
        return (Estimated) Held.analysed(analyzer, league, Map.of());
    }

    @ParameterizedTest
    @MethodSource("analyzers")
    void findNothingInASoundLeague(Analyzer<?> analyzer) {
        Estimated answer = analysed(analyzer, league());

        assertThat(answer.fit()).containsEntry("guards", List.of());
        assertThat(answer.references()).doesNotContain("Fisher1930");
    }

    @ParameterizedTest
    @MethodSource("analyzers")
    void warnOfMissingNumbersAndCiteTheirSource(Analyzer<?> analyzer) {
        Estimated answer = analysed(analyzer, kept(trial -> Integer.parseInt(trial.trial()) % 5 != 3));

        assertThat(answer.fit().get("guards").toString()).contains("missing-numbers");
        assertThat(answer.warnings())
                .anyMatch(warning -> warning.contains("numbers missing among") && warning.contains("Remedy: "));
        assertThat(answer.references()).contains("CommonPractice");
    }

    /** Only attempts that rebound wider than 30 degrees are kept: the scatter ends sooner below. */
    @ParameterizedTest
    @MethodSource("analyzers")
    void warnOfScatterThatIsCutOff(Analyzer<?> analyzer) {
        Estimated answer = analysed(analyzer, kept(trial -> trial.finalReboundAngleDeg() > 30));

        assertThat(answer.warnings()).anyMatch(warning -> warning.contains("ends sooner below"));
        assertThat(answer.references()).contains("Fisher1930");
    }

    /** Of 50 sessions of 40 attempts, one in each of 10 rooms lies in the band: 8 of every 40 numbers are missing there. */
    @Test
    void judgeTheSessionsThatAreComparedAlone() {
        Estimated answer = analysed(new Repeatability(), kept(trial -> Integer.parseInt(trial.trial()) % 5 != 3));

        long compared = ((Number) answer.fit().get("sessions")).longValue();
        assertThat(compared).isLessThan((long) ROOMS * SESSIONS);
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith(8 * compared + " numbers missing among "));
    }
}
