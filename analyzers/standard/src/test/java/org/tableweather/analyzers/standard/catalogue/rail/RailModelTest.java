package org.tableweather.analyzers.standard.catalogue.rail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.spi.Analysis.Reason;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/** Truths: those that {@link RailLeague} states; four standard errors are missed once in 16,000 draws. */
class RailModelTest {

    private static Estimated estimated(List<Held> pool, Map<String, String> set) {
        Analysis analysis = Held.analysed(new RailModel(), pool, set);
        assertThat(analysis).as("%s", analysis).isInstanceOf(Estimated.class);
        return (Estimated) analysis;
    }

    private static Declined declined(List<Held> pool, Map<String, String> set) {
        Analysis analysis = Held.analysed(new RailModel(), pool, set);
        assertThat(analysis).as("%s", analysis).isInstanceOf(Declined.class);
        return (Declined) analysis;
    }

    private static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static void holds(Estimated answer, String name, double truth) {
        Estimate estimate = estimate(answer, name);
        assertThat(estimate.value()).as("%s %s", name, estimate).isEqualTo(truth, within(4 * estimate.standardError()));
    }

    @Test
    void recoversTheTruth() {
        Estimated answer = estimated(new RailLeague().drawn(12, 5, 6, 3), Map.of());

        holds(answer, "restitution", RailLeague.RESTITUTION);
        holds(answer, "restitution.speed", RailLeague.RESTITUTION_SPEED);
        holds(answer, "restitution.humidity", RailLeague.RESTITUTION_HUMIDITY);
        holds(answer, "restitution.temperature", 0);
        holds(answer, "friction", RailLeague.FRICTION);
        holds(answer, "friction.humidity", 100 * Math.expm1(RailLeague.FRICTION_HUMIDITY));
        holds(answer, "friction.temperature", 100 * Math.expm1(RailLeague.FRICTION_TEMPERATURE));
        assertThat(estimate(answer, "friction.humidity").lower()).isGreaterThan(0);
        assertThat(estimate(answer, "rebound.change").upper())
                .as("damp tightens the rebound")
                .isLessThan(0);
        assertThat(answer.sentence()).contains("tighter when damp").startsWith("From 3");
        assertThat(answer.warnings()).anyMatch(warning -> warning.startsWith("Invented data"));
        assertThat(answer.plots()).hasSize(2);
        assertThat(answer.rooms()).hasSize(12);
    }

    /** Scatter put in: rooms 0.02 and 15 %, attempts 0.8° (0.5° of the approach taken out) and 0.012. */
    @Test
    void findsHowMuchRoomsAndAttemptsDiffer() {
        Estimated answer = estimated(new RailLeague().drawn(30, 5, 5, 4), Map.of());

        Map<String, Double> sd = new java.util.HashMap<>();
        answer.variance().forEach(each -> sd.put(each.name(), each.sd().orElseThrow()));
        assertThat(sd.get("room.restitution")).isBetween(0.013, 0.03);
        assertThat(sd.get("room.friction.log")).isBetween(0.1, 0.22);
        assertThat(sd.get("residual.angle")).isEqualTo(0.8, within(0.05));
        assertThat(sd.get("residual.speed-ratio")).isEqualTo(0.012, within(0.001));
    }

    @Test
    void fitsTheSteppedImpactToItsOwnTruth() {
        Estimated answer = estimated(new RailLeague().stepped().drawn(8, 4, 5, 5), Map.of("impact", "stepped"));

        holds(answer, "restitution", RailLeague.RESTITUTION);
        holds(answer, "friction", RailLeague.FRICTION);
        holds(answer, "friction.humidity", 100 * Math.expm1(RailLeague.FRICTION_HUMIDITY));
    }

    /** Intervals of the truth of 95 %: of 30 pools 25 to 30 hold it (binomial, 3 in 1000 do not). */
    @Test
    void intervalsHoldTheTruthAboutAsOftenAsTheySay() {
        int held = 0;
        for (int i = 0; i < 30; i++) {
            Estimate grip =
                    estimate(estimated(new RailLeague().drawn(8, 4, 3, 100 + i), Map.of()), "friction.humidity");
            double truth = 100 * Math.expm1(RailLeague.FRICTION_HUMIDITY);
            held += grip.lower() <= truth && truth <= grip.upper() ? 1 : 0;
        }
        assertThat(held).isBetween(25, 30);
    }

    @Test
    void saysThatAnglesAtOneApproachDoNotTellGripFromSpring() {
        Declined none = declined(new RailLeague().angles(45).withoutSpeeds().drawn(8, 4, 6, 7), Map.of());

        assertThat(none.reason()).isEqualTo(Reason.DEGENERATE);
        assertThat(none.detail()).contains("rebound_speed_mps", "30° and 60°");
        assertThat(none.warnings()).anyMatch(warning -> warning.startsWith("Invented data"));
    }

    @Test
    @SuppressWarnings("unchecked")
    void tellsWhatEachWayOfMeasuringWouldTell() {
        Estimated answer = estimated(new RailLeague().drawn(8, 4, 4, 8), Map.of());

        List<Map<String, Object>> ways =
                (List<Map<String, Object>>) answer.fit().get("identifiable");
        assertThat(ways)
                .extracting(way -> way.get("from"))
                .containsExactly("angles", "angles and speeds", "whole paths");
        double angles = (double) ways.get(0).get("restitution.error");
        double speeds = (double) ways.get(1).get("restitution.error");
        assertThat(speeds).isLessThanOrEqualTo(angles);
        assertThat(speeds).isEqualTo(estimate(answer, "restitution").standardError(), within(0.2 * speeds));
        assertThat((List<String>) ways.get(1).get("tells")).contains("restitution", "friction", "friction.humidity");
    }

    @Test
    void keepsWhatPredictionNeeds() {
        Estimated answer = estimated(new RailLeague().drawn(6, 4, 3, 9), Map.of());

        List<?> names = (List<?>) answer.fit().get("names");
        List<?> covariance = (List<?>) answer.fit().get("covariance");
        assertThat(names)
                .hasSameSizeAs((List<?>) answer.fit().get("parameters"))
                .hasSameSizeAs(covariance);
        int place = names.indexOf("restitution");
        double variance = (double) ((List<?>) covariance.get(place)).get(place);
        assertThat(Math.sqrt(variance))
                .isEqualTo(estimate(answer, "restitution").standardError(), within(1e-12));
    }

    @Test
    void leavesOutSideSpinAndSaysSo() {
        List<Held> pool = new ArrayList<>(new RailLeague().drawn(6, 4, 3, 9));
        List<Trial> trials = new ArrayList<>(pool.get(0).trials());
        trials.add(new TrialDraft(Kind.KICK, 900)
                .climate(21, 50)
                .with(Column.APPROACH_ANGLE_DEG, 40)
                .with(Column.REBOUND_ANGLE_DEG, 50)
                .with(Column.SIDE_SPIN_RPS, 4)
                .build());
        pool.set(0, new Held(pool.get(0).session(), trials));

        assertThat(estimated(pool, Map.of()).warnings()).anyMatch(warning -> warning.startsWith("1 pair left out"));
    }

    @Test
    void declinesKindly() {
        assertThat(declined(new RailLeague().drawn(1, 9, 3, 1), Map.of()).detail())
                .startsWith("One room");
        assertThat(declined(new RailLeague().drawn(3, 1, 3, 1), Map.of()).detail())
                .contains("at least");
        assertThat(declined(new RailLeague().atOneHumidity().drawn(6, 4, 3, 1), Map.of())
                        .detail())
                .startsWith("Humidity hardly varies");
        assertThat(declined(new RailLeague().drawn(6, 4, 3, 1), Map.of("shot", "none-such"))
                        .detail())
                .contains("none-such", "rebound-45");
        assertThat(declined(new RailLeague().angles(30).drawn(6, 4, 1, 1), Map.of("shot", "rebound-60"))
                        .reason())
                .isEqualTo(Reason.NOT_APPLICABLE);
    }
}
