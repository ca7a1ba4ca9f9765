package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.geometry.HomographyFit.Reason;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

class HomographyTest {

    private static Homography fitted(HomographyFit fit) {
        assertThat(fit).isInstanceOf(HomographyFit.Fitted.class);
        return ((HomographyFit.Fitted) fit).homography();
    }

    private static Reason reason(HomographyFit fit) {
        assertThat(fit).isInstanceOf(HomographyFit.Refused.class);
        assertThat(((HomographyFit.Refused) fit).detail()).isNotBlank();
        return ((HomographyFit.Refused) fit).reason();
    }

    private static KnownPoint known(double x, double y, double u, double v) {
        return new KnownPoint(new TablePoint(x, y), new PixelPoint(u, v));
    }

    /** A map by its eight coefficients, written out apart from the code under test. */
    private static PixelPoint image(double[] h, double x, double y) {
        double w = h[6] * x + h[7] * y + 1;
        return new PixelPoint((h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w);
    }

    private static List<KnownPoint> seen(double[] h, double[][] places) {
        List<KnownPoint> points = new ArrayList<>();
        for (double[] place : places) {
            PixelPoint at = image(h, place[0], place[1]);
            points.add(known(place[0], place[1], at.uPx(), at.vPx()));
        }
        return points;
    }

    private static void assertSeen(Homography homography, double x, double y, double u, double v, double tolerance) {
        PixelPoint at = homography.onFrame(new TablePoint(x, y));
        assertThat(at.uPx()).isCloseTo(u, within(tolerance));
        assertThat(at.vPx()).isCloseTo(v, within(tolerance));
    }

    @Nested
    class FourPoints {

        /**
         * Source: Zxing2007, published test of the unit square mapped to the quadrilateral (2,3) (10,4) (16,15) (4,9):
         * (½, ½) goes to (6.535211, 6.8873234), (1½, 1½) to (48, 42.42857).
         */
        @Test
        void meetAPublishedExample() {
            Homography map = fitted(Homography.fit(
                    List.of(known(0, 0, 2, 3), known(1, 0, 10, 4), known(1, 1, 16, 15), known(0, 1, 4, 9)), 0.5));
            assertSeen(map, 0.5, 0.5, 6.535211, 6.8873234, 1e-6);
            assertSeen(map, 1.5, 1.5, 48, 42.42857, 1e-5);
        }

        /** Source: exact rational arithmetic by hand: u = (400x − 100y + 200)/(x + 2y + 8), v = (20x − 200y + 900)/(...). */
        @Test
        void meetAMapOfWholeNumbers() {
            double[] h = {50, -12.5, 25, 2.5, -25, 112.5, 0.125, 0.25};
            Homography map = fitted(Homography.fit(seen(h, new double[][] {{0, 0}, {8, 0}, {8, 4}, {0, 4}}), 0.5));
            assertSeen(map, 2, 1, 900.0 / 12, 740.0 / 12, 1e-10);
            assertSeen(map, 4, 2, 1600.0 / 16, 580.0 / 16, 1e-10);
            TablePoint back =
                    map.onTable(new PixelPoint(900.0 / 12, 740.0 / 12)).orElseThrow();
            assertThat(back.distanceM(new TablePoint(2, 1))).isLessThan(1e-10);
            assertThat(map.residualRmsPx()).isLessThan(1e-9);
        }

        /** Source: the cross ratio of four points on a line does not change under projection (Pappus). */
        @Property(seed = "20250307", tries = 500)
        void keepTheCrossRatio(@ForAll @Scale(6) @DoubleRange(min = -0.3, max = 0.3) double tilt) {
            double[] h = {400, -120 + 50 * tilt, 200, 35, -260, 900, 0.06 + tilt / 5, 0.2 - tilt / 5};
            Homography map = fitted(Homography.fit(
                    seen(h, new double[][] {{0, 0}, {2.54, 0}, {2.54, 1.27}, {0, 1.27}, {1.27, 0.635}}), 0.5));
            double[] at = {0.1, 0.7, 1.6, 2.5};
            PixelPoint[] p = new PixelPoint[4];
            for (int i = 0; i < 4; i++) {
                p[i] = map.onFrame(new TablePoint(at[i], 0.1 + 0.4 * at[i]));
            }
            double onTable = (at[2] - at[0]) * (at[3] - at[1]) / ((at[2] - at[1]) * (at[3] - at[0]));
            double onFrame =
                    p[0].distancePx(p[2]) * p[1].distancePx(p[3]) / (p[1].distancePx(p[2]) * p[0].distancePx(p[3]));
            assertThat(onFrame).isCloseTo(onTable, within(1e-9));
        }

        /** Source: definition of the inverse. */
        @Property(seed = "20250308", tries = 1000)
        void goThereAndBack(
                @ForAll @Scale(6) @DoubleRange(min = 0, max = 2.54) double x,
                @ForAll @Scale(6) @DoubleRange(min = 0, max = 1.27) double y,
                @ForAll @Scale(3) @DoubleRange(min = -60, max = 60) double du,
                @ForAll @Scale(3) @DoubleRange(min = -60, max = 60) double dv) {
            HomographyFit fit = Homography.fit(
                    List.of(
                            known(0, 0, 100 + du, 900 + dv),
                            known(2.54, 0, 1800 - dv, 920 + du),
                            known(2.54, 1.27, 1300 + dv, 300),
                            known(0, 1.27, 500, 310 - du)),
                    0.5);
            Assume.that(fit instanceof HomographyFit.Fitted);
            Homography map = fitted(fit);
            TablePoint point = new TablePoint(x, y);
            assertThat(map.onTable(map.onFrame(point)).orElseThrow().distanceM(point))
                    .isLessThan(1e-10);
        }
    }

    @Nested
    class MorePoints {

        private final Golden golden = Golden.read("homography_least_squares");

        private List<KnownPoint> marked() {
            List<KnownPoint> points = new ArrayList<>();
            for (double[] row : golden.rows("points")) {
                points.add(known(row[0], row[1], row[2], row[3]));
            }
            return points;
        }

        @Test
        void meetTheBestMapOfAnIndependentComputation() {
            Homography map = fitted(Homography.fit(marked(), 0.5));
            double[] h = golden.row("coefficients");
            for (KnownPoint point : marked()) {
                PixelPoint best = image(h, point.onTable().xM(), point.onTable().yM());
                assertThat(map.onFrame(point.onTable()).distancePx(best)).isLessThan(1e-7);
            }
            double percent = 100 * golden.tolerance();
            assertThat(map.residualRmsPx()).isCloseTo(golden.number("rmsPx"), withinPercentage(percent));
            assertThat(map.residualRmsMm()).isCloseTo(golden.number("rmsMm"), withinPercentage(1e4 * percent));
            assertThat(map.knownPointErrorPx()).isCloseTo(golden.number("errorPx"), withinPercentage(percent));
        }

        @Test
        void trustTheStatedErrorWhenTheResidualIsSmaller() {
            assertThat(fitted(Homography.fit(marked(), 2)).knownPointErrorPx()).isEqualTo(2);
        }

        @Test
        void nameTheWorstMark() {
            List<KnownPoint> points = new ArrayList<>(marked());
            KnownPoint spoilt = points.get(6);
            points.set(
                    6,
                    known(
                            spoilt.onTable().xM(),
                            spoilt.onTable().yM(),
                            spoilt.onFrame().uPx() + 15,
                            453));
            Homography map = fitted(Homography.fit(points, 0.5));
            assertThat(map.worstPoint()).isEqualTo(6);
            assertThat(map.residualPx(6)).isGreaterThan(5);
        }
    }

    @Nested
    class Uncertainty {

        private final Golden golden = Golden.read("homography_propagation");

        @Test
        void ofMarksIsThatOfAnIndependentPropagation() {
            double[] h = golden.row("coefficients");
            Homography map =
                    fitted(Homography.fit(seen(h, golden.rows("knownPoints")), golden.number("knownPointErrorPx")));
            List<VideoMark> marks = new ArrayList<>();
            for (double[] place : golden.rows("marks")) {
                marks.add(new VideoMark(
                        marks.size() + 1,
                        marks.isEmpty() ? Contact.Point.START : Contact.Point.REST,
                        Optional.empty(),
                        image(h, place[0], place[1]),
                        Double.NaN));
            }
            MarkedPath path = map.trace(marks, golden.number("markErrorPx"), 0, TableSize.REFERENCE)
                    .orElseThrow();
            double percent = 100 * golden.tolerance();
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    assertThat(covariance(path, i, j))
                            .isCloseTo(golden.row("covarianceM2." + i)[j], withinPercentage(percent));
                }
            }
            assertThat(path.standardUncertaintyM(0).xM())
                    .isCloseTo(Math.sqrt(golden.row("covarianceM2.0")[0]), withinPercentage(percent));
        }

        /** By polarisation: C(i, j) = (var(i + j) − var(i) − var(j))/2. */
        private double covariance(MarkedPath path, int i, int j) {
            return i == j
                    ? variance(path, i, i) / 4
                    : (variance(path, i, j) - variance(path, i, i) / 4 - variance(path, j, j) / 4) / 2;
        }

        private double variance(MarkedPath path, int i, int j) {
            double[] gradient = new double[4];
            gradient[i] += 1;
            gradient[j] += 1;
            return path.covariance().variance(gradient);
        }

        /** Source: the golden file: 5-12-13 triangle seen by a camera, its uncertainty by shifting every pixel mark. */
        @Test
        void goesIntoTheReductionOfAPath() {
            double[] h = golden.row("coefficients");
            TableSize table = TableSize.REFERENCE;
            Homography map =
                    fitted(Homography.fit(seen(h, golden.rows("knownPoints")), golden.number("knownPointErrorPx")));
            double far = table.lineM(Rail.FAR);
            List<VideoMark> marks = List.of(
                    new VideoMark(1, Contact.Point.START, Optional.empty(), image(h, 0.5, far - 0.4), 0),
                    new VideoMark(2, Contact.Point.RAIL, Optional.of(Rail.FAR), image(h, 0.8, far), 0.25),
                    new VideoMark(3, Contact.Point.REST, Optional.empty(), image(h, 1.05, far - 0.6), 0.75));
            MarkedPath path =
                    map.trace(marks, golden.number("markErrorPx"), 0.005, table).orElseThrow();
            PathReduction.Reduced figures =
                    Paths.reduced(new PathReducer(table, MarkingError.byEye(table)).reduce(path, Optional.empty()));
            Measured angle = figures.finalReboundAngleDeg().orElseThrow();
            double percent = 100 * golden.tolerance();
            assertThat(angle.value()).isCloseTo(golden.number("angleDeg"), withinPercentage(percent));
            assertThat(angle.standardUncertainty())
                    .isCloseTo(golden.number("angleUncertaintyDeg"), withinPercentage(percent));
            List<Contact> rows = path.contacts("s", "1");
            assertThat(rows.get(1).xM()).isCloseTo(0.8, within(1e-9));
            assertThat(rows.get(1).rail()).contains(Rail.FAR);
        }
    }

    @Nested
    class Refusals {

        private final double[] camera = {410.5, -120.25, 212, 35.75, -260.5, 905, 0.0625, 0.21875};

        @Test
        void tooFewPoints() {
            assertThat(reason(Homography.fit(seen(camera, new double[][] {{0, 0}, {1, 0}, {1, 1}}), 1)))
                    .isEqualTo(Reason.TOO_FEW_POINTS);
        }

        @Test
        void threeOfFourOnOneLine() {
            double[][] places = {{0, 0}, {1, 0}, {2, 0}, {1, 1}};
            assertThat(reason(Homography.fit(seen(camera, places), 1))).isEqualTo(Reason.ON_ONE_LINE);
        }

        @Test
        void manyPointsOfOneRailAndOneMore() {
            double[][] places = {{0, 0}, {0.5, 0}, {1, 0}, {1.5, 0}, {2, 0}, {2.5, 0}, {1, 1}};
            assertThat(reason(Homography.fit(seen(camera, places), 1))).isEqualTo(Reason.ON_ONE_LINE);
        }

        @Test
        void theSamePointTwice() {
            double[][] places = {{0, 0}, {1, 0}, {1, 1}, {0, 1}, {1, 1}};
            assertThat(reason(Homography.fit(seen(camera, places), 1))).isEqualTo(Reason.SAME_POINT_TWICE);
        }

        @Test
        void numbersThatAreNone() {
            List<KnownPoint> points = new ArrayList<>(seen(camera, new double[][] {{0, 0}, {1, 0}, {1, 1}, {0, 1}}));
            assertThat(reason(Homography.fit(points, Double.NaN))).isEqualTo(Reason.NOT_FINITE);
            points.set(0, known(0, Double.NaN, 1, 1));
            assertThat(reason(Homography.fit(points, 1))).isEqualTo(Reason.NOT_FINITE);
        }

        @Test
        void twoMarksExchanged() {
            List<KnownPoint> points = seen(camera, new double[][] {{0, 0}, {2.54, 0}, {2.54, 1.27}, {0, 1.27}});
            List<PixelPoint> marks =
                    new ArrayList<>(points.stream().map(KnownPoint::onFrame).toList());
            Collections.swap(marks, 0, 1);
            List<KnownPoint> exchanged = new ArrayList<>();
            for (int i = 0; i < 4; i++) {
                exchanged.add(new KnownPoint(points.get(i).onTable(), marks.get(i)));
            }
            assertThat(reason(Homography.fit(exchanged, 1))).isEqualTo(Reason.MARKS_EXCHANGED);
        }

        /** Source: w = 0 at y = −(1 + 0.0625x)/0.21875: beyond it the camera sees no table. */
        @Test
        void aPlaceAboveTheHorizonIsNoPointOfTheTable() {
            Homography map = fitted(Homography.fit(
                    seen(camera, new double[][] {{0, 0}, {2.54, 0}, {2.54, 1.27}, {0, 1.27}}), 1));
            PixelPoint beyond = image(camera, 1, -6);
            assertThat(map.onTable(beyond)).isEmpty();
            VideoMark mark = new VideoMark(1, Contact.Point.START, Optional.empty(), beyond, Double.NaN);
            assertThat(map.trace(List.of(mark), 1, 0, TableSize.REFERENCE)).isEmpty();
        }
    }

    /** Source: WpaEquipment: sights 3 11/16 in behind the nose; the nose of the far rail is at y = 1.27 m. */
    @Test
    void knownPointsOfATable() {
        TableSize table = TableSize.REFERENCE;
        PixelPoint at = new PixelPoint(0, 0);
        TablePoint nose = KnownPoint.nose(table, Rail.FAR, 2, at).onTable();
        assertThat(nose.distanceM(new TablePoint(0.635, 1.27))).isLessThan(1e-12);
        TablePoint sight = KnownPoint.sight(table, Rail.HEAD, 1, 0.0936625, at).onTable();
        assertThat(sight.distanceM(new TablePoint(-0.0936625, 0.3175))).isLessThan(1e-12);
    }
}
