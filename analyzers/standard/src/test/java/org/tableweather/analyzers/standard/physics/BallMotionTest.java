package org.tableweather.analyzers.standard.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tableweather.analyzers.standard.physics.BallPath.Ending;
import org.tableweather.analyzers.standard.physics.PathEvent.Kind;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;

/** Expected figures: closed forms of a rigid sphere, recomputed elsewhere by step integration to seven digits. */
class BallMotionTest {

    private static final Ball BALL = Ball.POOL;
    private static final TableSize HALL = new TableSize(600, 300, BALL.diameterM());
    private static final RailImpact NO_RAIL = before -> {
        throw new AssertionError("no rail should be met, met with " + before);
    };

    private static BallState sentAlong(double speedMps, double rollRatio, double sideSpinRps) {
        return BallState.sent(new TablePoint(5, 150), new TablePoint(6, 150), speedMps, rollRatio, sideSpinRps, BALL);
    }

    private static BallPath rest(ClothFriction cloth, BallState start) {
        return new BallRun(HALL, BALL, cloth, NO_RAIL).toRest(start);
    }

    /**
     * Source: 2 m/s without spin on friction 0.2 slides 0.2913475 s and 0.4994528 m and rolls on with 5/7 of its speed.
     *
     * @source Coriolis1835
     */
    @Test
    void slidesUntilItRolls() {
        PathEvent end = rest(new ClothFriction(0.2, 0.01, 10), sentAlong(2, 0, 0))
                .events()
                .get(0);

        assertThat(end.kind()).isEqualTo(Kind.SLIDE_ENDS);
        assertThat(end.timeS()).isEqualTo(2 * 2 / (7 * 0.2 * 9.80665), within(1e-14));
        assertThat(end.timeS()).isEqualTo(0.2913475, within(1e-7));
        assertThat(end.after().xM() - 5).isEqualTo(12 * 4 / (49 * 0.2 * 9.80665), within(1e-12));
        assertThat(end.after().xM() - 5).isEqualTo(0.4994528, within(1e-7));
        assertThat(end.after().speedMps()).isEqualTo(2 * 5.0 / 7, within(1e-14));
        assertThat(BALL.energyJ(end.after()) / BALL.energyJ(end.before())).isEqualTo(1, within(1e-14));
        assertThat(BALL.energyJ(end.after()) / BALL.energyJ(sentAlong(2, 0, 0))).isEqualTo(5.0 / 7, within(1e-14));
    }

    /** Source: at 1 m/s and 0.01 a ball rolls v²/(2 μ g) = 5.0985811 m; from rest back over 2.54 m it takes 7.1973317 s. */
    @Test
    void rollsOut() {
        BallPath path = rest(new ClothFriction(0.2, 0.01, 10), sentAlong(1, 1, 0));
        BallPath length = rest(new ClothFriction(0.2, 0.01, 10), sentAlong(Math.sqrt(2 * 0.0980665 * 2.54), 1, 0));

        assertThat(path.ending()).isEqualTo(Ending.AT_REST);
        assertThat(path.events()).extracting(PathEvent::kind).containsExactly(Kind.ROLL_ENDS);
        assertThat(path.end().xM() - 5).isEqualTo(5.0985811, within(1e-7));
        assertThat(path.endS()).isEqualTo(10.19716, within(1e-5));
        assertThat(length.end().xM() - 5).isEqualTo(2.54, within(1e-12));
        assertThat(length.endS()).isEqualTo(7.1973317, within(1e-7));
    }

    /** Source: spin about the vertical loses α a second and moves nothing; Alciatore's middle, 10 rad/s². */
    @Test
    void spinsOutWithoutMoving() {
        BallPath path = rest(new ClothFriction(0.2, 0.01, 10), sentAlong(0, 1, 3));

        assertThat(path.events()).extracting(PathEvent::kind).containsExactly(Kind.SPIN_ENDS);
        assertThat(path.endS()).isEqualTo(2 * Math.PI * 3 / 10, within(1e-14));
        assertThat(path.end().place()).isEqualTo(new TablePoint(5, 150));
    }

    /**
     * Source: whatever the spin, friction at the lowest point leaves v + 2/5 Rω about that point unchanged, so the ball rolls on with
     * (5v + 2Rω)/7; the path until then is a parabola.
     *
     * @source Coriolis1835
     */
    @Test
    void keepsTheMomentumAboutItsLowestPoint() {
        Random random = new Random(5);
        for (int i = 0; i < 1000; i++) {
            BallState start = random(random);
            PathEvent end = rest(new ClothFriction(0.15 + 0.2 * random.nextDouble(), 0.01, 10), start).events().stream()
                    .filter(event -> event.kind() == Kind.SLIDE_ENDS)
                    .findFirst()
                    .orElseThrow();

            assertThat(end.after().vxMps()).isEqualTo((5 * start.vxMps() + 2 * start.spinYMps()) / 7, within(1e-13));
            assertThat(end.after().vyMps()).isEqualTo((5 * start.vyMps() - 2 * start.spinXMps()) / 7, within(1e-13));
            double meanX = (start.vxMps() + end.after().vxMps()) / 2;
            assertThat(end.after().xM() - start.xM()).isEqualTo(meanX * end.timeS(), within(1e-12));
        }
    }

    @Test
    void balancesItsEnergy() {
        Random random = new Random(6);
        RailImpact rail = new ClosedFormImpact(new RailProperties(RestitutionLaw.constant(0.75), 0.2, 0.27, 0.2));
        TableSize table = new TableSize(2.54, 1.27, BALL.diameterM());
        for (int i = 0; i < 1000; i++) {
            BallState start = random(random).at(0.3 + 2 * random.nextDouble(), 0.3 + 0.6 * random.nextDouble());
            BallPath path = new BallRun(table, BALL, ClothFriction.TYPICAL, rail).toRest(start);
            EnergyBook book = path.energy();

            assertThat(path.ending()).isEqualTo(Ending.AT_REST);
            assertThat(book.imbalanceJ()).isEqualTo(0, within(1e-10));
            assertThat(List.of(book.slidingJ(), book.rollingJ(), book.spinJ(), book.railJ()))
                    .allSatisfy(work -> assertThat(work).isGreaterThanOrEqualTo(-1e-15));
            assertThat(book.endJ()).isZero();
            assertThat(table.outsideM(path.end().place())).isZero();
        }
    }

    /** The state at a time does not depend on how the way there is cut. */
    @Test
    void goesOnWhereItWasStopped() {
        Random random = new Random(7);
        BallRun run = new BallRun(HALL, BALL, ClothFriction.TYPICAL, NO_RAIL);
        for (int i = 0; i < 200; i++) {
            BallState start = random(random);
            double first = random.nextDouble();
            double second = random.nextDouble();
            BallState whole = run.forSeconds(start, first + second).end();
            BallState parts =
                    run.forSeconds(run.forSeconds(start, first).end(), second).end();

            assertThat(parts.xM()).isEqualTo(whole.xM(), within(1e-12));
            assertThat(parts.vyMps()).isEqualTo(whole.vyMps(), within(1e-12));
            assertThat(parts.spinZMps()).isEqualTo(whole.spinZMps(), within(1e-12));
        }
    }

    /** Source: a hop of 1 m/s at 5° is 0.38729 mm high; dropped on a bed of 0.5 a ball comes back to a quarter of the height. */
    @Test
    void hopsAndBounces() {
        double up = Math.sin(Math.toRadians(5));

        assertThat(1000 * new Hop(up).heightM()).isEqualTo(0.38729, within(1e-5));
        assertThat(Hop.ofHeightM(0.3).next(0.5).heightM()).isEqualTo(0.25 * 0.3, within(1e-15));
        assertThat(Hop.ofHeightM(0.3).next(0.9).heightM()).isEqualTo(0.81 * 0.3, within(1e-15));
        assertThat(new Hop(1).secondsAloft()).isEqualTo(2 / 9.80665, within(1e-15));
    }

    /** Source: the printed ranges; snooker cloth 0.178 to 0.245 (Mathavan 2009, from memory) lies inside. */
    @Test
    void takesTypicalValuesInsideThePublishedRanges() {
        for (PublishedRange range : PublishedRange.values()) {
            assertThat(range.contains(range.typical)).as(range.name()).isTrue();
        }
        assertThat(PublishedRange.CLOTH_SLIDING.contains(0.178)).isTrue();
        assertThat(PublishedRange.CLOTH_SLIDING.contains(0.245)).isTrue();
        assertThat(ClothFriction.TYPICAL).isEqualTo(new ClothFriction(0.2, 0.01, 10));
    }

    @Test
    void goesOnForEverWithoutFriction() {
        TableSize table = new TableSize(2.54, 1.27, BALL.diameterM());
        BallPath spinning = new BallRun(table, BALL, ClothFriction.NONE, NO_RAIL)
                .toRest(sentAlong(0, 1, 2).at(1, 0.6));

        assertThat(spinning.ending()).isEqualTo(Ending.NOTHING_MORE);
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> new Ball(0, 0.16)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new ClothFriction(-0.1, 0, 0)).hasMessageContaining("-0.1");
        assertThatThrownBy(
                        () -> new BallRun(TableSize.REFERENCE, new Ball(0.0525, 0.14), ClothFriction.TYPICAL, NO_RAIL))
                .hasMessageContaining("0.0525");
        assertThatThrownBy(() -> BallState.sent(new TablePoint(1, 1), new TablePoint(1, 1), 1, 1, 0, BALL))
                .hasMessageContaining("two places");
    }

    private static BallState random(Random random) {
        return new BallState(
                300,
                150,
                random.nextGaussian(),
                random.nextGaussian(),
                2 * random.nextGaussian(),
                2 * random.nextGaussian(),
                random.nextGaussian());
    }
}
