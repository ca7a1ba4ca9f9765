package org.tableweather.schema.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.CameraMarks.SeenPoint;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

/** Source: geometry by hand: a camera straight above, 500 pixels to the metre, its frame's corner 0.2 m outside the table's. */
class FramePathsTest {
    private static final TableSize SIZE = TableSize.REFERENCE;
    private static final double NAN = Double.NaN;

    private static double px(double metres) {
        return 500 * (metres + 0.2);
    }

    private static SeenPoint seen(double xDia, double yDia) {
        TablePoint at = SIZE.point(xDia, yDia);
        return new SeenPoint(xDia, yDia, px(at.xM()), px(at.yM()));
    }

    private static CameraMarks marks(String camera, String session) {
        return new CameraMarks(
                camera,
                Optional.ofNullable(session),
                OptionalDouble.of(0.5),
                List.of(seen(0, 0), seen(8, 0), seen(8, 4), seen(0, 4), seen(4, 0), seen(4, 4)));
    }

    private static Contact row(int seq, Contact.Point point, Rail rail, double xM, double yM, String camera) {
        return new Contact(
                "s1", "1", seq, point, Optional.ofNullable(rail), NAN, NAN, NAN, NAN, px(xM), px(yM), camera, NAN);
    }

    private static List<Contact> vee(double outDeg) {
        double r = SIZE.ballRadiusM();
        double run = 0.5 * Math.tan(Math.toRadians(outDeg));
        return List.of(
                row(3, Contact.Point.REST, null, 1.2 + run, r + 0.5, ""),
                row(1, Contact.Point.START, null, 0.7, r + 0.5, ""),
                row(2, Contact.Point.RAIL, Rail.NEAR, 1.2, r, ""));
    }

    @Test
    void giveTheAnglesOfTheTableFromPixels() {
        CameraMarks marks = marks("cam1", null);
        HomographyFit.Fitted fit = (HomographyFit.Fitted) FramePaths.fit(marks, SIZE);
        MarkedPath path =
                FramePaths.path(vee(40), marks, fit.homography(), 0, SIZE).orElseThrow();

        PathReduction.Reduced reduced =
                (PathReduction.Reduced) new PathReducer(SIZE, MarkingError.byEye(SIZE)).reduce(path, Optional.empty());

        assertThat(fit.homography().residualRmsPx()).isLessThan(1e-6);
        assertThat(reduced.touches().get(0).approachAngleDeg().orElseThrow().value())
                .isCloseTo(45, within(1e-6));
        Measured rebound = reduced.touches().get(0).reboundAngleDeg().orElseThrow();
        assertThat(rebound.value()).isCloseTo(40, within(1e-6));
        // half a pixel is 1 mm over a leg of 0.65 m: 0.001 √2 / 0.65 rad = 0.12 degrees, and the shared error of the
        // frame
        assertThat(rebound.standardUncertainty()).isBetween(0.06, 0.2);
    }

    @Test
    void refuseThreePoints() {
        CameraMarks three = new CameraMarks(
                "cam1", Optional.empty(), OptionalDouble.empty(), List.of(seen(0, 0), seen(8, 0), seen(8, 4)));

        assertThat(FramePaths.fit(three, SIZE))
                .isInstanceOfSatisfying(
                        HomographyFit.Refused.class,
                        refused -> assertThat(refused.reason()).isEqualTo(HomographyFit.Reason.TOO_FEW_POINTS));
    }

    @Test
    void belongToTheCameraOfTheRowAndToItsSessionFirst() {
        CameraMarks everywhere = marks("cam1", null);
        CameraMarks here = marks("cam1", "s1");
        CameraMarks other = marks("cam2", null);
        Contact plain = row(1, Contact.Point.START, null, 0.7, 0.5, "");
        Contact named = row(1, Contact.Point.START, null, 0.7, 0.5, "cam2");

        assertThat(FramePaths.marksOf(List.of(everywhere), plain)).contains(everywhere);
        assertThat(FramePaths.marksOf(List.of(everywhere, here), plain)).contains(here);
        assertThat(FramePaths.marksOf(List.of(everywhere, other), plain)).isEmpty();
        assertThat(FramePaths.marksOf(List.of(everywhere, other), named)).contains(other);
        assertThat(FramePaths.marksOf(List.of(marks("cam1", "s9")), plain)).isEmpty();
        assertThat(FramePaths.isOnFrame(plain)).isTrue();
    }
}
