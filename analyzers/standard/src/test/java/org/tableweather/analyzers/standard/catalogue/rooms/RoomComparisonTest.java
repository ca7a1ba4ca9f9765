package org.tableweather.analyzers.standard.catalogue.rooms;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Effect;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.spi.Plot;
import org.tableweather.analyzers.standard.catalogue.ReboundHumidity;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.schema.record.Trial;

class RoomComparisonTest {

    private static Analysis analysed(List<Held> league, Map<String, String> set) {
        return Held.analysed(new RoomComparison(), league, set);
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

    /** A league in which one more room, three sessions at 49 to 51 %RH, has another level. */
    private static List<Held> withRoom(String key, double level) {
        List<Held> league = new ArrayList<>(RoomLeague.drawn(30, 6, 20, 0.4, 12));
        Random random = new Random(4);
        for (int session = 0; session < 3; session++) {
            List<Trial> trials = new ArrayList<>();
            for (int trial = 1; trial <= 20; trial++) {
                trials.add(RoomLeague.trial(trial, 21, 49 + session, level + 2 * random.nextGaussian()));
            }
            league.add(RoomLeague.held(key, session, trials));
        }
        return league;
    }

    /** The pooled model of rebound-humidity, whose fits are held against lme4, gives the same rooms. */
    @Test
    void agreesWithThePooledModel() {
        List<Held> league = RoomLeague.drawn(12, 5, 15, 0.3, 21);
        Estimated pooled = (Estimated) Held.analysed(new ReboundHumidity(), league, Map.of());
        Estimated answer = estimated(league, Map.of("room", RoomLeague.key(3)));
        assertThat(answer.rooms()).isEqualTo(pooled.rooms());
        Effect level = pooled.rooms().get(3).effects().get(0);
        Estimate departure = estimate(answer, "intercept.departure");
        assertThat(departure.value()).isEqualTo(level.value());
        assertThat(departure.standardError()).isEqualTo(level.standardError());
        // normal quantile 1.959964, from any table
        assertThat(departure.upper()).isCloseTo(level.value() + 1.959964 * level.standardError(), within(1e-6));
        assertThat(estimate(answer, "intercept").value())
                .isEqualTo(estimate(pooled, "intercept").value());
        assertThat(estimate(answer, "humidity.here").value())
                .isCloseTo(
                        estimate(pooled, "humidity").value()
                                + pooled.rooms().get(3).effects().get(1).value(),
                        within(1e-12));
    }

    @Test
    void callsARoomFarOffUnusualAndFirst() {
        Estimated answer = estimated(withRoom("league/lofty", 38), Map.of("room", "lofty"));
        Estimate place = estimate(answer, "intercept.place");
        assertThat(place.value()).isEqualTo(1);
        assertThat(place.upper()).isEqualTo(1);
        assertThat(answer.sentence()).startsWith("Room league/lofty among 31 rooms: its level differs by ");
        assertThat(answer.sentence()).contains("unusual among rooms");
    }

    /** The truth of the draw: an interval of 95 % holds about 95 in 100 rooms' departures. */
    @Test
    void keepsMostTrueLevelsInItsIntervals() {
        Estimated answer = estimated(RoomLeague.drawn(80, 6, 20, 0.4, 31), Map.of());
        Random truth = new Random(31);
        int held = 0;
        for (int room = 0; room < 80; room++) {
            double level = truth.nextGaussian();
            truth.nextGaussian();
            for (int session = 0; session < 6; session++) {
                truth.nextDouble();
                truth.nextGaussian();
                for (int trial = 0; trial < 20; trial++) {
                    truth.nextDouble();
                    truth.nextGaussian();
                }
            }
            Effect effect = answer.rooms().get(room).effects().get(0);
            // the mean of the levels drawn is known to about 0.12 only
            held += Math.abs(effect.value() - level) <= 1.96 * effect.standardError() + 0.12 ? 1 : 0;
        }
        // binomial, 80 at 0.95: fewer than 70 has a chance of about 1 in 1000
        assertThat(held).isGreaterThanOrEqualTo(70);
    }

    @Nested
    class NextSessions {

        /** Three sessions near 50 %RH say nothing of a slope: the far ends of the pool do. */
        @Test
        void goToTheEndsOfTheHumidities() {
            Estimated answer = estimated(withRoom("league/lofty", 32), Map.of("room", "lofty"));
            List<?> next = (List<?>) answer.fit().get("nextRhPct");
            assertThat(next).hasSize(3).allSatisfy(pct -> assertThat(pct).isIn(30.0, 35.0, 65.0, 70.0));
            double now = (double) answer.fit().get("standardErrorNow");
            assertThat((double) answer.fit().get("standardErrorAfter")).isLessThan(0.75 * now);
            assertThat(now).isEqualTo(estimate(answer, "humidity.departure").standardError());
            assertThat(answer.sentence()).contains("Next, hold sessions of 20 trials at ");
            assertThat(answer.warnings())
                    .anyMatch(warning -> warning.startsWith("Of this room's slope little is known"));
        }

        /** Information adds up: a session there, in truth, brings the standard error near what was foretold. */
        @Test
        void bringWhatIsForetold() {
            List<Held> league = withRoom("league/lofty", 32);
            Estimated before = estimated(league, Map.of("room", "lofty"));
            Random random = new Random(8);
            List<?> next = (List<?>) before.fit().get("nextRhPct");
            for (int session = 0; session < 3; session++) {
                double rhPct = (double) next.get(session);
                List<Trial> trials = new ArrayList<>();
                for (int trial = 1; trial <= 20; trial++) {
                    double angle = 32 - 0.08 * (rhPct - 50) + 2 * random.nextGaussian();
                    trials.add(RoomLeague.trial(trial, 21, rhPct, angle));
                }
                league.add(RoomLeague.held("league/lofty", 10 + session, trials));
            }
            Estimated after = estimated(league, Map.of("room", "lofty"));
            // the variances are estimated anew, each to some per cent
            assertThat(estimate(after, "humidity.departure").standardError())
                    .isCloseTo((double) before.fit().get("standardErrorAfter"), within(0.02));
        }

        @Test
        void areDrawnOverTheReachableHumidities() {
            Estimated answer = estimated(withRoom("league/lofty", 32), Map.of("room", "lofty"));
            Plot plot = plot(answer, "next-session");
            assertThat(plot.series().get(1).x()).isSubsetOf(30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0);
            assertThat(plot.series().get(1).y())
                    .allSatisfy(error -> assertThat(error)
                            .isLessThanOrEqualTo(plot.series().get(0).y().get(0) + 1e-12));
        }
    }

    @Test
    void takesTheRoomWithTheMostTrialsAndSaysSo() {
        List<Held> league = new ArrayList<>(RoomLeague.drawn(6, 4, 10, 0.3, 4));
        Held more = RoomLeague.drawn(5, 1, 11, 0.3, 5).get(4);
        league.add(RoomLeague.held(RoomLeague.key(4), 9, more.trials()));
        Estimated answer = estimated(league, Map.of());
        assertThat(answer.parameters()).containsEntry("room", RoomLeague.key(4));
        assertThat(answer.warnings()).anyMatch(warning -> warning.endsWith("set room to yours."));
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
            assertThat(none.detail()).contains("1 session in 1 room").contains("5 sessions in 2 rooms");
        }

        @Test
        void aRoomThatIsNotThere() {
            Declined none = declined(RoomLeague.drawn(3, 4, 5, 0.2, 2), Map.of("room", "elsewhere"));
            assertThat(none.reason()).isEqualTo(Reason.NOT_APPLICABLE);
            assertThat(none.detail()).contains("No room elsewhere").contains(RoomLeague.key(0));
        }

        @Test
        void aNameOfTwoRooms() {
            List<Held> league = new ArrayList<>(RoomLeague.drawn(3, 4, 5, 0.2, 2));
            for (Held held : RoomLeague.drawn(1, 4, 5, 0.2, 3)) {
                league.add(RoomLeague.held("other/room-000", league.size(), held.trials()));
            }
            assertThat(declined(league, Map.of("room", "room-000")).detail())
                    .contains("2 rooms are called room-000")
                    .contains("other/room-000");
        }

        @Test
        void oneHumidity() {
            List<Held> league = new ArrayList<>();
            for (Held held : RoomLeague.drawn(3, 3, 5, 0.2, 2)) {
                List<Trial> trials = new ArrayList<>();
                for (Trial trial : held.trials()) {
                    trials.add(RoomLeague.trial(trials.size() + 1, 21, 50, trial.finalReboundAngleDeg()));
                }
                league.add(RoomLeague.held(held.session().roomKey(), league.size(), trials));
            }
            assertThat(declined(league, Map.of()).reason()).isEqualTo(Reason.DEGENERATE);
        }
    }
}
