package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.tableweather.schema.geometry.Paths.NAN;
import static org.tableweather.schema.geometry.Paths.diamonds;
import static org.tableweather.schema.geometry.Paths.marksOf;
import static org.tableweather.schema.geometry.Paths.metres;
import static org.tableweather.schema.geometry.Paths.reduced;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Contact.Point;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

class PathReducerTest {

    private static final TableSize TABLE = TableSize.REFERENCE;
    private static final double FAR = TABLE.lineM(Rail.FAR);
    private static final double FOOT = TABLE.lineM(Rail.FOOT);
    private static final MarkingError ONE_MM = new MarkingError(0.001, 0.01);

    private static PathReducer reducer(MarkingError error) {
        return new PathReducer(TABLE, error);
    }

    @Nested
    class Angles {

        /** Source: right triangles 3-4-5 and 5-12-13: atan(3/4) = 36.8698976°, atan(5/12) = 22.6198649°. */
        @Test
        void ofWholeNumberedTriangles() {
            List<Contact> path = List.of(
                    metres(1, Point.START, null, 0.5, FAR - 0.4, NAN),
                    metres(2, Point.RAIL, Rail.FAR, 0.8, FAR, NAN),
                    metres(3, Point.REST, null, 1.05, FAR - 0.6, NAN));
            RailTouch touch = reduced(reducer(ONE_MM).reduce(path)).touches().get(0);
            assertThat(touch.rail()).isEqualTo(Rail.FAR);
            assertThat(touch.travel()).isEqualTo(1);
            assertThat(touch.approachAngleDeg().orElseThrow().value()).isCloseTo(36.8698976, within(1e-7));
            assertThat(touch.reboundAngleDeg().orElseThrow().value()).isCloseTo(22.6198649, within(1e-7));
        }

        /** Source: the same triangles seen from a short rail, and reversed by spin: the sign turns. */
        @Test
        void areNegativeWhenTheBallComesBackOnItsOwnSide() {
            List<Contact> path = List.of(
                    metres(1, Point.START, null, FOOT - 0.4, 0.8, NAN),
                    metres(2, Point.RAIL, Rail.FOOT, FOOT, 0.5, NAN),
                    metres(3, Point.REST, null, FOOT - 0.6, 0.75, NAN));
            RailTouch touch = reduced(reducer(ONE_MM).reduce(path)).touches().get(0);
            assertThat(touch.travel()).isEqualTo(-1);
            assertThat(touch.approachAngleDeg().orElseThrow().value()).isCloseTo(36.8698976, within(1e-7));
            assertThat(touch.reboundAngleDeg().orElseThrow().value()).isCloseTo(-22.6198649, within(1e-7));
        }

        /** Source: definition of the mirror image: equal angles, path length of the straight line. */
        @Property(seed = "20250305", tries = 1000)
        void ofAMirrorPathAreEqualAtEveryRail(
                @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 2.4) double x,
                @ForAll @Scale(6) @DoubleRange(min = 0.1, max = 1.1) double y,
                @ForAll @Scale(6) @DoubleRange(min = 0, max = 6.283185) double heading,
                @ForAll @IntRange(min = 1, max = 6) int rails) {
            TablePoint towards = new TablePoint(x + Math.cos(heading), y + Math.sin(heading));
            MirrorPath shot = new MirrorImage(TABLE).shoot(new TablePoint(x, y), towards, rails + 1);
            Assume.that(shot instanceof MirrorPath.Found);
            MirrorPath.Found path = (MirrorPath.Found) shot;
            PathReduction reduction = reducer(ONE_MM).reduce(marksOf(path));
            Assume.that(reduction instanceof PathReduction.Reduced);
            PathReduction.Reduced figures = (PathReduction.Reduced) reduction;
            assertThat(figures.touches()).extracting(RailTouch::rail).isEqualTo(path.rails());
            assertThat(figures.counted()).isEqualTo(rails);
            for (RailTouch touch : figures.touches()) {
                assertThat(touch.reboundAngleDeg().orElseThrow().value())
                        .isCloseTo(touch.approachAngleDeg().orElseThrow().value(), within(1e-9));
            }
            assertThat(figures.pathLengthM().value()).isCloseTo(path.lengthM(), within(1e-12));
        }

        /** Source: definition: an angle does not depend on the unit that the marks are written in. */
        @Test
        void areTheSameInDiamondsAndInMetres() {
            double radius = TABLE.ballRadiusM() / TABLE.diamondAlongM();
            List<Contact> path = List.of(
                    diamonds(1, Point.START, null, 2, 2),
                    diamonds(2, Point.RAIL, Rail.NEAR, 3, radius),
                    diamonds(3, Point.REST, null, 4, 2));
            double degrees = Math.toDegrees(Math.atan2(1, 2 - radius));
            PathReduction.Reduced figures = reduced(reducer(ONE_MM).reduce(path));
            assertThat(figures.finalReboundAngleDeg().orElseThrow().value()).isCloseTo(degrees, within(1e-10));
        }

        @Test
        void holdAContactToTheLineOfItsRail() {
            // Marked 4 mm short of where a ball touches: the angle is that of the contact on the line.
            List<Contact> path = List.of(
                    metres(1, Point.START, null, 0.5, FAR - 0.4, NAN),
                    metres(2, Point.RAIL, Rail.FAR, 0.8, FAR - 0.004, NAN),
                    metres(3, Point.REST, null, 1.05, FAR - 0.6, NAN));
            RailTouch touch = reduced(reducer(ONE_MM).reduce(path)).touches().get(0);
            assertThat(touch.approachAngleDeg().orElseThrow().value()).isCloseTo(36.8698976, within(1e-7));
            assertThat(touch.offLineM()).isCloseTo(-0.004, within(1e-12));
        }

        @Test
        void areMissingWhereNothingIsMarked() {
            List<Contact> path = List.of(
                    metres(1, Point.RAIL, Rail.FAR, 0.8, FAR, NAN), metres(2, Point.RAIL, Rail.NEAR, 1.2, 0.03, NAN));
            PathReduction.Reduced figures = reduced(reducer(ONE_MM).reduce(path));
            assertThat(figures.touches().get(0).approachAngleDeg()).isEmpty();
            assertThat(figures.touches().get(1).reboundAngleDeg()).isEmpty();
            assertThat(figures.finalReboundAngleDeg()).isEmpty();
        }

        @Test
        void areTakenFromRowsInTheOrderOfTheirNumbers() {
            List<Contact> path = new ArrayList<>(List.of(
                    metres(3, Point.REST, null, 1.05, FAR - 0.6, NAN),
                    metres(1, Point.START, null, 0.5, FAR - 0.4, NAN),
                    metres(2, Point.RAIL, Rail.FAR, 0.8, FAR, NAN)));
            assertThat(reduced(reducer(ONE_MM).reduce(path))
                            .finalReboundAngleDeg()
                            .orElseThrow()
                            .value())
                    .isCloseTo(22.6198649, within(1e-7));
        }
    }

    @Nested
    class Speeds {

        /** Source: 0.5 m (a 3-4-5 triangle) in 0.25 s is 2 m/s; 0.65 m (5-12-13) in 0.5 s is 1.3 m/s. */
        @Test
        void areMeansOverTheLegs() {
            List<Contact> path = List.of(
                    metres(1, Point.START, null, 0.5, FAR - 0.4, 0),
                    metres(2, Point.RAIL, Rail.FAR, 0.8, FAR, 0.25),
                    metres(3, Point.REST, null, 1.05, FAR - 0.6, 0.75));
            RailTouch touch = reduced(reducer(ONE_MM).reduce(path)).touches().get(0);
            assertThat(touch.approachSpeedMps().orElseThrow().value()).isCloseTo(2, within(1e-12));
            assertThat(touch.reboundSpeedMps().orElseThrow().value()).isCloseTo(1.3, within(1e-12));
        }

        /** Source: law of propagation by hand: √((u_L/t)² + 2·(v·u_t/t)²) with u_L = √(1² + 0.6²) mm. */
        @Test
        void carryTheErrorsOfMarksAndTimes() {
            List<Contact> path = List.of(
                    metres(1, Point.START, null, 0.5, FAR - 0.4, 0),
                    metres(2, Point.RAIL, Rail.FAR, 0.8, FAR, 0.25),
                    metres(3, Point.REST, null, 1.05, FAR - 0.6, 0.75));
            RailTouch touch = reduced(reducer(ONE_MM).reduce(path)).touches().get(0);
            // The leg 0.3, 0.4: ∂L/∂x = 0.6, ∂L/∂y = 0.8; the contact moves along its rail only.
            double length = 0.001 * Math.sqrt(0.6 * 0.6 + 0.8 * 0.8 + 0.6 * 0.6);
            double expected = Math.sqrt(Math.pow(length / 0.25, 2) + 2 * Math.pow(2 * 0.01 / 0.25, 2));
            assertThat(touch.approachSpeedMps().orElseThrow().standardUncertainty())
                    .isCloseTo(expected, within(1e-12));
        }
    }

    @Nested
    class Uncertainty {

        /** Source: law of propagation by hand: straight at a rail from d = 0.5 m, u(θ) = √2·u/d. */
        @Test
        void ofAStraightApproach() {
            List<Contact> path = List.of(
                    metres(1, Point.START, null, 1.0, FAR - 0.5, NAN), metres(2, Point.RAIL, Rail.FAR, 1.0, FAR, NAN));
            Measured angle = reduced(reducer(ONE_MM).reduce(path))
                    .touches()
                    .get(0)
                    .approachAngleDeg()
                    .orElseThrow();
            assertThat(angle.value()).isZero();
            assertThat(angle.standardUncertainty())
                    .isCloseTo(Math.toDegrees(Math.sqrt(2) * 0.001 / 0.5), within(1e-12));
        }

        /** Source: propagation of distributions by simulation (JCGM101), 40,000 draws: within 1.5 %. */
        @Test
        void ofEveryFigureIsWhatSimulationGives() {
            Shot shot = Paths.shot(
                    new Shot.Position(2.5, 3),
                    List.of(Rail.NEAR, Rail.FOOT, Rail.FAR),
                    new Shot.Position(2, 0),
                    Rail.NEAR);
            MirrorPath.Found path = (MirrorPath.Found) NominalPath.of(shot, TABLE);
            MarkingError error = new MarkingError(0.0015, 0.01);
            Random random = new Random(20250306);
            int draws = 40_000;
            double[] sums = new double[3];
            double[] squares = new double[3];
            double[] exact = figures(reduced(reducer(error).reduce(marksOf(path), shot)));
            for (int i = 0; i < draws; i++) {
                double[] drawn = figures(reduced(reducer(error).reduce(shaken(path, random), shot)));
                for (int k = 0; k < 3; k++) {
                    sums[k] += drawn[k] - exact[k];
                    squares[k] += (drawn[k] - exact[k]) * (drawn[k] - exact[k]);
                }
            }
            double[] stated = uncertainties(reduced(reducer(error).reduce(marksOf(path), shot)));
            for (int k = 0; k < 3; k++) {
                double deviation = Math.sqrt(squares[k] / draws - Math.pow(sums[k] / draws, 2));
                assertThat(stated[k] / deviation).isCloseTo(1, within(0.015));
            }
        }

        private double[] figures(PathReduction.Reduced path) {
            return new double[] {
                path.finalReboundAngleDeg().orElseThrow().value(),
                path.landing().orElseThrow().offsetDia().value(),
                path.pathLengthM().value()
            };
        }

        private double[] uncertainties(PathReduction.Reduced path) {
            return new double[] {
                path.finalReboundAngleDeg().orElseThrow().standardUncertainty(),
                path.landing().orElseThrow().offsetDia().standardUncertainty(),
                path.pathLengthM().standardUncertainty()
            };
        }

        /** Marks shaken by 1.5 mm; cut at 3.3 standard deviations, where a mark would be refused as off its rail. */
        private List<Contact> shaken(MirrorPath.Found path, Random random) {
            List<Contact> contacts = new ArrayList<>();
            for (Contact c : marksOf(path)) {
                double x = c.xM() + 0.0015 * Math.max(-3.3, Math.min(3.3, random.nextGaussian()));
                double y = c.yM() + 0.0015 * Math.max(-3.3, Math.min(3.3, random.nextGaussian()));
                contacts.add(metres(c.seq(), c.point(), c.rail().orElse(null), x, y, NAN));
            }
            return contacts;
        }
    }

    @Nested
    class Landings {

        private final Shot twoRails =
                Paths.shot(new Shot.Position(2, 3), List.of(Rail.NEAR, Rail.FOOT), new Shot.Position(5.5, 4), Rail.FAR);

        private PathReduction.Reduced reduce(List<Contact> path, Shot shot) {
            return reduced(reducer(MarkingError.byEye(TABLE)).reduce(path, shot));
        }

        /** Source: definition: the mirror path of a shot lands on its target. */
        @Test
        void ofTheNominalPathIsOnTheTarget() {
            PathReduction.Reduced figures =
                    reduce(marksOf((MirrorPath.Found) NominalPath.of(twoRails, TABLE)), twoRails);
            assertThat(figures.followsShot()).isTrue();
            assertThat(figures.landing().orElseThrow().offsetDia().value()).isCloseTo(0, within(1e-12));
            assertThat(figures.landing().orElseThrow().extendedM()).isCloseTo(0, within(1e-12));
        }

        /** Source: definition: this shot runs towards the head rail along the far rail, so 5.2 is 0.3 long of 5.5. */
        @Test
        void arePositiveInTheDirectionOfTravel() {
            List<Contact> path = List.of(
                    diamonds(1, Point.START, null, 2, 3),
                    diamonds(2, Point.RAIL, Rail.NEAR, 5.6, 0.09),
                    diamonds(3, Point.RAIL, Rail.FOOT, 7.91, 1.9),
                    diamonds(4, Point.RAIL, Rail.FAR, 5.2, 3.91),
                    diamonds(5, Point.REST, null, 4.0, 3.0));
            PathReduction.Reduced figures = reduce(path, twoRails);
            assertThat(figures.counted()).isEqualTo(2);
            assertThat(figures.touches()).hasSize(3);
            assertThat(figures.landing().orElseThrow().offsetDia().value()).isCloseTo(0.3, within(1e-9));
            // By eye to a tenth of a diamond: 0.1/√12, the contact being free along its rail only.
            assertThat(figures.landing().orElseThrow().offsetDia().standardUncertainty())
                    .isCloseTo(0.1 / Math.sqrt(12), within(1e-9));
            // The final rebound is that off the foot rail, the last rail of the shot: atan(2.01/2.71).
            assertThat(figures.finalReboundAngleDeg().orElseThrow().value())
                    .isCloseTo(Math.toDegrees(Math.atan2(2.01, 2.71)), within(1e-9));
        }

        /** Source: similar triangles: half the way across is half the way along. */
        @Test
        void areDrawnOnWhenTheBallStopsBefore() {
            List<Contact> path = List.of(
                    diamonds(1, Point.START, null, 2, 3),
                    diamonds(2, Point.RAIL, Rail.NEAR, 5.6, 0.09),
                    diamonds(3, Point.RAIL, Rail.FOOT, 7.91, 1.9),
                    diamonds(4, Point.REST, null, (7.91 + 5.2) / 2, (1.9 + 3.91) / 2));
            Landing landing = reduce(path, twoRails).landing().orElseThrow();
            assertThat(landing.offsetDia().value()).isCloseTo(0.3, within(1e-9));
            double half = Math.hypot((7.91 - 5.2) / 2, (3.91 - 1.9) / 2) * TABLE.diamondAlongM();
            assertThat(landing.extendedM()).isCloseTo(half, within(1e-6));
        }

        @Test
        void areMissingWhenAnotherPathWasTaken() {
            List<Contact> path = List.of(
                    diamonds(1, Point.START, null, 2, 3),
                    diamonds(2, Point.RAIL, Rail.NEAR, 3, 0.09),
                    diamonds(3, Point.RAIL, Rail.FAR, 4.3, 3.91),
                    diamonds(4, Point.REST, null, 5, 2));
            PathReduction.Reduced figures = reduce(path, twoRails);
            assertThat(figures.followsShot()).isFalse();
            assertThat(figures.landing()).isEmpty();
            assertThat(figures.finalReboundAngleDeg()).isEmpty();
            assertThat(figures.counted()).isEqualTo(2);
        }

        /** Source: definition: without a start the attempt's own travel says which way is long. */
        @Test
        void takeTheAttemptsOwnTravelWhenTheShotHasNoStart() {
            Shot shot = Paths.shot(null, List.of(Rail.NEAR), new Shot.Position(3, 4), Rail.FAR);
            List<Contact> path = List.of(
                    diamonds(1, Point.START, null, 7, 2),
                    diamonds(2, Point.RAIL, Rail.NEAR, 5, 0.09),
                    diamonds(3, Point.RAIL, Rail.FAR, 2.5, 3.91));
            assertThat(reduce(path, shot).landing().orElseThrow().offsetDia().value())
                    .isCloseTo(0.5, within(1e-9));
        }

        @Test
        void countFromTheStartWhenTheShotHasNoRails() {
            Shot straight = Paths.shot(new Shot.Position(1, 2), List.of(), new Shot.Position(8, 2), Rail.FOOT);
            List<Contact> path =
                    List.of(diamonds(1, Point.START, null, 1, 2), diamonds(2, Point.RAIL, Rail.FOOT, 7.91, 2.2));
            PathReduction.Reduced figures = reduce(path, straight);
            assertThat(figures.counted()).isZero();
            assertThat(figures.landing().orElseThrow().offsetDia().value()).isCloseTo(0.2, within(1e-9));
        }
    }
}
