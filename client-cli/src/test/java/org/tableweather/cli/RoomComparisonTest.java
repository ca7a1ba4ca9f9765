package org.tableweather.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.AnalyzerInfo;

/** Analyses written by hand; the words follow from the figures by the rules of the class. */
class RoomComparisonTest {
    private static final Analysis.RoomEffects AVERAGE = room("club/a", 0.1, 0.3);
    private static final Analysis.RoomEffects APART = room("club/b", -1.5, 0.3);
    private static final Analysis.RoomEffects FAR = room("club/c", 2.6, 0.3);

    @Test
    void tellsNothingFromChance() {
        assertThat(of("a", OptionalDouble.of(1)).sentence()).endsWith("the data do not tell it from an average room.");
    }

    @Test
    void weighsAClearDepartureByHowMuchRoomsVary() {
        assertThat(of("b", OptionalDouble.of(1)).sentence()).endsWith("a real departure, of a size that rooms show.");
        assertThat(of("c", OptionalDouble.of(1)).sentence()).endsWith("unusual among rooms.");
    }

    @Test
    void claimsNoMoreWhenHowMuchRoomsVaryIsUnknown() {
        RoomComparison comparison = of("c", OptionalDouble.empty());

        assertThat(comparison.sentence()).endsWith("a real departure from the average room.");
        assertThat(JsonText.of(comparison)).contains("\"roomSd\" : null");
    }

    @Test
    void namesValueIntervalAndPlace() {
        RoomComparison.Departure departure =
                of("b", OptionalDouble.of(1)).departures().get(0);

        assertThat(departure.here()).hasValue(48 - 1.5);
        assertThat(departure.place()).isEqualTo(3);
        assertThat(of("b", OptionalDouble.of(1)).sentence())
                .startsWith("Mean angle (48.00 deg in an average room): here -1.50 deg,")
                .contains("place 3 of 3");
    }

    @Test
    void asksForTheWholeKeyWhenTwoRoomsShareAnId() {
        AnalysisRun run = run(List.of(AVERAGE, room("other/a", 0, 0.3)), OptionalDouble.of(1));

        assertThatThrownBy(() -> RoomComparison.of(run, Optional.of("a")))
                .isInstanceOfSatisfying(Failure.class, failure -> {
                    assertThat(failure).hasMessage("2 rooms are called a");
                    assertThat(failure.remedy()).isEqualTo("name one of: club/a, other/a");
                });
        assertThat(RoomComparison.of(run, Optional.of("other/a")).room()).isEqualTo("other/a");
    }

    private static RoomComparison of(String room, OptionalDouble roomSd) {
        return RoomComparison.of(run(List.of(AVERAGE, APART, FAR), roomSd), Optional.of(room));
    }

    private static AnalysisRun run(List<Analysis.RoomEffects> rooms, OptionalDouble roomSd) {
        return new AnalysisRun(
                new AnalyzerInfo("x", "1", "1", "", "", "", List.of(), List.of(), List.of(), List.of(), List.of()),
                new AnalysisRun.Dataset(1, 1, rooms.size(), false, "sha256:00"),
                new Analysis.Estimated(
                        "",
                        Map.of(),
                        Map.of(),
                        List.of(new Analysis.Estimate("intercept", 48.0, 0.2, 10.0, 47.0, 49.0, "deg", "mean angle")),
                        List.of(new Analysis.VarianceComponent(
                                "room.intercept", roomSd, OptionalDouble.empty(), Optional.empty())),
                        List.of(),
                        rooms,
                        List.of(),
                        List.of(),
                        List.of()));
    }

    private static Analysis.RoomEffects room(String key, double value, double standardError) {
        return new Analysis.RoomEffects(key, 5, 100, List.of(new Analysis.Effect("intercept", value, standardError)));
    }
}
