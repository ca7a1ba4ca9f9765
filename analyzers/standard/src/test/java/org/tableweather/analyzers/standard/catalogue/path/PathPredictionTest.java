package org.tableweather.analyzers.standard.catalogue.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.spi.Analysis;
import org.tableweather.analyzers.spi.Analysis.Declined;
import org.tableweather.analyzers.spi.Analysis.Estimate;
import org.tableweather.analyzers.spi.Analysis.Estimated;
import org.tableweather.analyzers.standard.catalogue.draft.Held;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft;
import org.tableweather.analyzers.standard.catalogue.draft.TrialDraft.Column;
import org.tableweather.analyzers.standard.catalogue.rail.RailLeague;
import org.tableweather.analyzers.standard.numeric.StudentT;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.analyzers.standard.physics.BallRun;
import org.tableweather.analyzers.standard.physics.BallState;
import org.tableweather.analyzers.standard.physics.ClosedFormImpact;
import org.tableweather.analyzers.standard.physics.ClothFriction;
import org.tableweather.analyzers.standard.physics.RailProperties;
import org.tableweather.analyzers.standard.physics.RestitutionLaw;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Trial;

/** Truths: those that {@link RailLeague} states, sent through the ball library here. */
class PathPredictionTest {

    private static final List<Held> POOL = new RailLeague().drawn(12, 5, 4, 3);

    private static Analysis analysed(List<Held> pool, String... set) {
        Map<String, String> parameters = new HashMap<>(Map.of("shot", "kick-2-rail"));
        for (int i = 0; i < set.length; i += 2) {
            parameters.put(set[i], set[i + 1]);
        }
        return Held.analysed(new PathPrediction(), pool, parameters);
    }

    private static Estimated estimated(String... set) {
        Analysis analysis = analysed(POOL, set);
        assertThat(analysis).as("%s", analysis).isInstanceOf(Estimated.class);
        return (Estimated) analysis;
    }

    private static Declined declined(List<Held> pool, String... set) {
        Analysis analysis = analysed(pool, set);
        assertThat(analysis).as("%s", analysis).isInstanceOf(Declined.class);
        return (Declined) analysis;
    }

    private static Estimate estimate(Estimated answer, String name) {
        return answer.estimates().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double width(Estimated answer, String name) {
        Estimate estimate = estimate(answer, name);
        return estimate.upper() - estimate.lower();
    }

    /** x of the landing of {@code kick-2-rail} at 24 °C and a humidity, by the truth, diamonds; the cloth's triangle has these means. */
    private static double truth(double rhPct) {
        double x = (rhPct - 50) / 10;
        double e = RailLeague.RESTITUTION + RailLeague.RESTITUTION_HUMIDITY * x;
        double friction = RailLeague.FRICTION
                * Math.exp(RailLeague.FRICTION_HUMIDITY * x + RailLeague.FRICTION_TEMPERATURE * (24 - 21) / 5);
        RailProperties rail = new RailProperties(
                new RestitutionLaw(e, RailLeague.RESTITUTION_SPEED, 1.75), friction, RailProperties.POOL_NOSE_SINE, 0);
        TableSize table = TableSize.REFERENCE;
        ClothFriction cloth = new ClothFriction(0.25, 0.01, 10);
        var from = table.point(2, 3);
        var aim = table.point(5.598, 0.09);
        double speed = Math.sqrt(2.5 * 2.5 + 2 * 0.01 * ClothFriction.GRAVITY * from.distanceM(aim));
        BallState start = BallState.sent(from, aim, speed, 1, 0, Ball.POOL);
        var contacts = new BallRun(table, Ball.POOL, cloth, new ClosedFormImpact(rail))
                .toRails(start, 3)
                .contacts();
        return table.diamonds(contacts.get(2).before().place()).xDia();
    }

    @Test
    void findsTheDriftOfTheTruth() {
        Estimated answer = estimated();
        Estimate drift = estimate(answer, "drift");
        // long is towards the head rail: kick-2-rail comes back along the far rail
        double expected = truth(40) - truth(70);

        assertThat(drift.value()).isEqualTo(expected, within(4 * drift.standardError()));
        assertThat(drift.upper()).as("damp brings it short").isLessThan(0);
        assertThat(answer.sentence())
                .startsWith("From 24 °C and 40 %RH to 24 °C and 70 %RH the landing of kick-2-rail moves by −")
                .contains("diamonds nearer to the foot rail along the near rail")
                .contains("The reason: the rails grip more");
    }

    /** Student's t on 11 degrees of freedom times the standard error to first order, beside the points of the draws. */
    @Test
    void agreesWithTheFirstOrder() {
        Estimated answer = estimated();
        double firstOrder = (double) answer.fit().get("drift.error.firstOrder");

        assertThat(width(answer, "drift") / (2 * StudentT.halfWidth(0.95, 11) * firstOrder))
                .isEqualTo(1, within(0.1));
        assertThat(width(estimated("seed", "2"), "drift")).isEqualTo(width(answer, "drift"), within(0.02));
    }

    @Test
    void aimsSoThatTheLandingComesBack() {
        Estimated answer = estimated();
        double aim = 5.598 + estimate(answer, "aim.change").value();
        Estimated aimed = estimated("aim_dia", aim + ",0.09");
        double speed = estimate(answer, "spin.change").value();
        Estimated spun = estimated("side_spin_rps", Double.toString(speed));

        double wanted = estimate(answer, "landing.from").value();
        assertThat(estimate(aimed, "landing.to").value()).isEqualTo(wanted, within(1e-6));
        assertThat(estimate(spun, "landing.to").value()).isEqualTo(wanted, within(1e-6));
    }

    @Test
    void sharesTheDriftOutToTheRails() {
        Estimated answer = estimated();

        assertThat(estimate(answer, "drift.rail.1").value()
                        + estimate(answer, "drift.rail.2").value())
                .isEqualTo(estimate(answer, "drift").value(), within(1e-9));
        assertThat(Math.abs(estimate(answer, "drift.friction").value()))
                .as("the truth changes friction by 36 %%, restitution by 0.024")
                .isGreaterThan(Math.abs(estimate(answer, "drift.restitution").value()));
    }

    @Test
    void isSurerInAKnownRoom() {
        String room = POOL.get(0).session().roomKey();
        Estimated own = estimated("room", room);

        assertThat(width(own, "landing.from")).isLessThan(width(estimated(), "landing.from"));
        assertThat(own.sentence()).contains("in room " + room);
        assertThat(declined(POOL, "room", "rome-0").detail())
                .contains("no room rome-0")
                .contains(room);
    }

    @Test
    void followsATypedShot() {
        Analysis analysis = Held.analysed(
                new PathPrediction(),
                POOL,
                Map.of("start_dia", "2,3", "aim_dia", "5.598,0.09", "speed_mps", "2.51", "rails", "near,foot"));
        Estimated typed = (Estimated) analysis;

        // the same way as kick-2-rail but for a hundredth of the speed; told as a place along the far rail
        assertThat(estimate(typed, "drift").value())
                .isEqualTo(-estimate(estimated(), "drift").value(), within(0.05));
    }

    @Test
    void declinesKindly() {
        assertThat(declined(List.of()).detail())
                .startsWith("The rail cannot be fitted to this pool")
                .contains("no trials");
        assertThat(declined(POOL, "speed_mps", "0.3").detail())
                .contains("the ball comes to rest after")
                .contains("choose another aim or speed");
        assertThat(declined(new RailLeague().atOneHumidity().drawn(6, 4, 3, 1)).detail())
                .contains("Humidity hardly varies");
    }

    /** μ = v²/(2gd), air drag aside, which takes less than 3 % at 0.9 m/s. */
    @Test
    void takesTheRollingFromRollOuts() {
        double slow = 0.02;
        double travelM = 0.9 * 0.9 / (2 * slow * ClothFriction.GRAVITY);
        List<Held> rolled = new ArrayList<>();
        for (Held held : POOL) {
            List<Trial> trials = new ArrayList<>(held.trials());
            for (int i = 1; i <= 2; i++) {
                trials.add(new TrialDraft(Kind.SPEED, 1000 + i)
                        .shot("roll-out-ramp")
                        .climate(21, 50)
                        .with(Column.APPROACH_SPEED_MPS, 0.9)
                        .with(Column.RUN_OUT_M, travelM)
                        .build());
            }
            rolled.add(new Held(held.session(), trials));
        }
        Estimated pool = (Estimated) analysed(rolled);
        Estimated own =
                (Estimated) analysed(rolled, "room", POOL.get(0).session().roomKey());

        assertThat((double) pool.fit().get("cloth.rolling")).isEqualTo(slow, within(0.03 * slow));
        assertThat(pool.fit()).containsEntry("cloth.rolling.from", "roll-outs of the pool's rooms");
        assertThat(own.fit()).containsEntry("cloth.rolling.from", "roll-outs of the room");
        assertThat(estimated().fit()).containsEntry("cloth.rolling.from", "published range");
        assertThat(width(pool, "landing.from")).isNotEqualTo(width(estimated(), "landing.from"));
    }

    @Test
    void checksNothingWithoutLandings() {
        assertThat(declined(POOL, "task", "check-on-pool").detail())
                .startsWith("0 rooms with landings of kick-2-rail")
                .contains("at least 3 are needed");
    }

    @Test
    void saysWhatCannotBeAsked() {
        assertThatThrownBy(() -> analysed(POOL, "shot", "kick-2-rails"))
                .hasMessageContaining("shot = kick-2-rails is no shot over rails")
                .hasMessageContaining("kick-2-rail, ");
        assertThatThrownBy(() -> analysed(POOL, "to_rh_pct", "107"))
                .hasMessage("parameter to_rh_pct = 107 is outside 5 to 95 %RH: set a room's relative humidity");
        assertThatThrownBy(() -> analysed(POOL, "aim_dia", "9,1")).hasMessageContaining("no place on the table");
        assertThatThrownBy(() -> analysed(POOL, "rails", "near,left")).hasMessageContaining("left is no rail");
    }
}
