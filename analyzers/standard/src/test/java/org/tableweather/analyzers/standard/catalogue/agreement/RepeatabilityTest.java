package org.tableweather.analyzers.standard.catalogue.agreement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomLeague;
import org.tableweather.analyzers.standard.statistics.golden.GoldenFile;
import org.tableweather.schema.record.Trial;

class RepeatabilityTest {

    private static Analysis analysed(List<Held> league, Map<String, String> set) {
        return Held.analysed(new Repeatability(), league, set);
    }

    private static Estimated estimated(List<Held> league, Map<String, String> set) {
        return (Estimated) analysed(league, set);
    }

    private static Declined declined(List<Held> league, Map<String, String> set) {
        return (Declined) analysed(league, set);
    }

    private static double estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(one -> one.name().equals(name))
                .map(Estimate::value)
                .findFirst()
                .orElseThrow();
    }

    private static double point(Estimated answer, String id, String room) {
        Plot plot = answer.plots().stream()
                .filter(one -> one.id().equals(id))
                .findFirst()
                .orElseThrow();
        return plot.series().stream()
                .filter(one -> one.name().equals(room))
                .findFirst()
                .orElseThrow()
                .y()
                .get(0);
    }

    private static Held session(String room, int session, double rhPct, double... outcomes) {
        List<Trial> trials = new ArrayList<>();
        for (int i = 0; i < outcomes.length; i++) {
            trials.add(RoomLeague.trial(i + 1, 21, rhPct, outcomes[i]));
        }
        return RoomLeague.held(room, session, trials);
    }

    private static String room(String label) {
        return "study/" + label;
    }

    /** Serum glucose of eight laboratories as eight rooms of three trials at 50 %RH. */
    @Nested
    class AstmE691GlucoseAsSessions {

        private final GoldenFile golden = GoldenFile.read("interlab/astm-e691-glucose.properties");

        private List<Held> material(String material) {
            List<Held> league = new ArrayList<>();
            for (int i = 1; i <= 8; i++) {
                league.add(session(room("lab-" + i), 0, 50, golden.numbers(material + "." + i)));
            }
            return league;
        }

        @ParameterizedTest
        @ValueSource(strings = {"A", "D", "E"})
        void meetsThePrintedFourDecimals(String material) {
            double[] printed = golden.numbers(material + ".printed");
            double tolerance = golden.number("tolerance");
            Estimated answer = estimated(material(material), Map.of());
            assertThat(estimate(answer, "mean")).isCloseTo(printed[0], within(tolerance));
            assertThat(estimate(answer, "repeatability.sd")).isCloseTo(printed[2], within(tolerance));
            assertThat(estimate(answer, "reproducibility.sd")).isCloseTo(printed[3], within(tolerance));
            // the standard's limits are 2.8 standard deviations
            assertThat(estimate(answer, "repeatability.limit")).isCloseTo(2.8 * printed[2], within(3 * tolerance));
            assertThat(estimate(answer, "reproducibility.limit")).isCloseTo(2.8 * printed[3], within(3 * tolerance));
        }

        @Test
        void flagsLaboratory2OnMaterialE() {
            Estimated answer = estimated(material("E"), Map.of());
            assertThat(point(answer, "mandel-k", room("lab-2"))).isCloseTo(golden.number("E.k.2"), within(0.005));
            assertThat(point(answer, "mandel-k", "bound, 0.5 %")).isCloseTo(golden.number("critical.k"), within(0.005));
            assertThat(point(answer, "mandel-h", "upper bound, 0.5 %"))
                    .isCloseTo(golden.number("critical.h"), within(0.005));
            assertThat(answer.warnings())
                    .filteredOn(warning -> warning.startsWith("Beyond the 0.5 % bounds"))
                    .singleElement()
                    .asString()
                    .contains(room("lab-2"))
                    .doesNotContain(room("lab-1"), room("lab-3"));
        }
    }

    /** Worked examples whose figures stand in the golden files. */
    @Nested
    class WorkedExamplesAsSessions {

        private List<Held> league(GoldenFile golden) {
            List<Held> league = new ArrayList<>();
            for (String label : golden.words("labs")) {
                league.add(session(room(label), 0, 50, golden.numbers("lab." + label)));
            }
            return league;
        }

        @ParameterizedTest
        @ValueSource(strings = {"rail", "dyestuff", "gravity", "coop-s1", "coop-s4", "coop-s5"})
        void givesTheirStandardDeviations(String data) {
            GoldenFile golden = GoldenFile.read("interlab/" + data + ".properties");
            Estimated answer = estimated(league(golden), Map.of());
            GoldenFile.assertNear(estimate(answer, "repeatability.sd"), golden.number("s_r"), 1e-9);
            GoldenFile.assertNear(estimate(answer, "between-rooms.sd"), golden.number("s_L"), 1e-9);
            GoldenFile.assertNear(estimate(answer, "reproducibility.sd"), golden.number("s_R"), 1e-9);
            GoldenFile.assertNear((double) answer.fit().get("fPValue"), golden.number("F_p"), 1e-8);
            double[] h = golden.numbers("mandel_h");
            String[] labels = golden.words("labs");
            for (int i = 0; i < h.length; i++) {
                assertThat(point(answer, "mandel-h", room(labels[i]))).isCloseTo(h[i], within(1e-9));
            }
        }

        /** L4 is high at 5 % (1.960 > 1.887) and just short of 1 % (1.973); its scatter is beyond 1 %. */
        @Test
        void tellsAStragglerFromAnOutlier() {
            GoldenFile golden = GoldenFile.read("interlab/coop-s1.properties");
            Estimated answer = estimated(league(golden), Map.of());
            assertThat(answer.warnings())
                    .anyMatch(warning ->
                            warning.startsWith("The highest mean lies apart: " + room("L4") + " (beyond the 5 % bound"))
                    .anyMatch(warning -> warning.startsWith("Trials scatter too widely in "
                            + room(golden.text("cochran_lab")) + " (beyond the 1 % bound"))
                    .noneMatch(warning -> warning.startsWith("The lowest mean"));
        }
    }

    @Nested
    class Band {

        private final List<Held> league = List.of(
                session(room("a"), 0, 41, 30.1, 30.4, 29.8),
                session(room("a"), 1, 62, 28.0, 28.3, 28.1),
                session(room("a"), 2, 66, 27.9, 28.4, 28.6),
                session(room("b"), 0, 65, 27.5, 27.9, 27.8),
                session(room("c"), 0, 61, 28.8, 28.5, 28.9),
                session(room("d"), 0, 30, 31.2, 31.5, 31.1));

        @Test
        void holdsTheMostRoomsWhenNoneIsAsked() {
            Estimated answer = estimated(league, Map.of());
            assertThat(answer.parameters()).containsEntry("from_pct", "57.5").containsEntry("to_pct", "67.5");
            assertThat(answer.sentence()).startsWith("At 57.5 to 67.5 % relative humidity, in 3 rooms");
            assertThat(answer.warnings()).anyMatch(warning -> warning.contains("not compared: " + room("d")));
        }

        @Test
        void takesOneSessionOfARoomOrAll() {
            Map<String, String> band = Map.of("from_pct", "60", "to_pct", "70");
            assertThat(estimated(league, band).fit())
                    .containsEntry("sessions", 3)
                    .containsEntry("trials", 9L);
            Map<String, String> all = Map.of("from_pct", "60", "to_pct", "70", "sessions", "all");
            assertThat(estimated(league, all).fit())
                    .containsEntry("sessions", 4)
                    .containsEntry("trials", 12L);
        }

        @Test
        void mustBeginBelowItsEnd() {
            assertThatThrownBy(() -> analysed(league, Map.of("from_pct", "60", "to_pct", "50")))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("from_pct = 60 is not below to_pct = 50");
            assertThatThrownBy(() -> analysed(league, Map.of("to_pct", "120")))
                    .hasMessageContaining("outside 0 to 100 %RH");
        }

        @Test
        void withoutRoomsIsDeclined() {
            Declined none = declined(league, Map.of("from_pct", "80"));
            assertThat(none.reason()).isEqualTo(Reason.TOO_FEW_RECORDS);
            assertThat(none.detail()).contains("At 80 to 90 %RH").contains("set another band");
        }
    }

    /** Truth of the draw: trials 2, sessions 0.5, rooms 1; slope taken out by a narrow band. */
    @Test
    void recoversTheTruthOfManyRooms() {
        List<Held> league = RoomLeague.drawn(150, 12, 20, 0, 9);
        Estimated answer = estimated(league, Map.of("from_pct", "48", "to_pct", "52"));
        // about 106 rooms: standard errors of s_r 0.03, of s_L 0.09, of the session's 0.1
        assertThat(estimate(answer, "repeatability.sd")).isCloseTo(2, within(0.1));
        assertThat(estimate(answer, "between-rooms.sd")).isCloseTo(Math.sqrt(1.25), within(0.27));
        assertThat(estimate(answer, "session.sd")).isCloseTo(0.5, within(0.3));
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Invented data"));
    }

    @Nested
    class Declines {

        @Test
        void threeTrialsOfOneRoom() {
            Declined none = declined(List.of(session(room("a"), 0, 50, 31, 32, 31.5)), Map.of());
            assertThat(none.reason()).isEqualTo(Reason.TOO_FEW_RECORDS);
            assertThat(none.detail()).contains("1 room of 1 with a session there; 2 are needed");
        }

        @Test
        void resultsThatNeverVary() {
            List<Held> still = List.of(session(room("a"), 0, 50, 31, 31), session(room("b"), 0, 50, 32, 32));
            Declined none = declined(still, Map.of());
            assertThat(none.reason()).isEqualTo(Reason.DEGENERATE);
            assertThat(none.detail()).contains("log the outcome to a finer step");
        }
    }
}
