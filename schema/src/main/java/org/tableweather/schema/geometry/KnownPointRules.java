package org.tableweather.schema.geometry;

import java.util.List;
import java.util.Optional;
import org.tableweather.schema.geometry.HomographyFit.Reason;
import org.tableweather.schema.geometry.HomographyFit.Refused;

/** Whether known points can determine a homography at all. */
final class KnownPointRules {

    /** Three points are on one line when their triangle is thinner than this, as twice its area over its longest side². */
    private static final double THIN = 1e-4;

    private static final int FEWEST = 4;

    private final List<double[]> onTable;
    private final List<double[]> onFrame;

    KnownPointRules(List<KnownPoint> points) {
        onTable = points.stream()
                .map(point ->
                        new double[] {point.onTable().xM(), point.onTable().yM()})
                .toList();
        onFrame = points.stream()
                .map(point ->
                        new double[] {point.onFrame().uPx(), point.onFrame().vPx()})
                .toList();
    }

    List<double[]> onTable() {
        return onTable;
    }

    List<double[]> onFrame() {
        return onFrame;
    }

    Optional<Refused> fault(double markingErrorPx) {
        if (onTable.size() < FEWEST) {
            return refused(Reason.TOO_FEW_POINTS, onTable.size() + " known points: mark at least " + FEWEST);
        }
        if (!(markingErrorPx >= 0 && Double.isFinite(markingErrorPx)) || !finite(onTable) || !finite(onFrame)) {
            return refused(Reason.NOT_FINITE, "coordinates and the marking error must be numbers, the error >= 0");
        }
        if (twice(onTable) || twice(onFrame)) {
            return refused(Reason.SAME_POINT_TWICE, "two known points share a place: mark different points");
        }
        // With more than four points, marking errors hide what is on one line on the frame; the table is known exactly.
        if (!spansPlane(onTable) || (onFrame.size() == FEWEST && !spansPlane(onFrame))) {
            return refused(
                    Reason.ON_ONE_LINE,
                    "no four known points of which no three lie on one line: add points on another rail");
        }
        return Optional.empty();
    }

    static Optional<Refused> refused(Reason reason, String detail) {
        return Optional.of(new Refused(reason, detail));
    }

    private static boolean finite(List<double[]> points) {
        return points.stream().allMatch(point -> Double.isFinite(point[0]) && Double.isFinite(point[1]));
    }

    private static boolean twice(List<double[]> points) {
        for (int i = 0; i < points.size(); i++) {
            for (int j = 0; j < i; j++) {
                if (points.get(i)[0] == points.get(j)[0] && points.get(i)[1] == points.get(j)[1]) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean spansPlane(List<double[]> points) {
        int n = points.size();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                for (int k = 0; k < j; k++) {
                    if (!thin(points.get(i), points.get(j), points.get(k)) && hasFourth(points, i, j, k)) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static boolean hasFourth(List<double[]> points, int i, int j, int k) {
        double[] a = points.get(i);
        double[] b = points.get(j);
        double[] c = points.get(k);
        return points.stream().anyMatch(d -> !thin(a, b, d) && !thin(b, c, d) && !thin(a, c, d));
    }

    private static boolean thin(double[] a, double[] b, double[] c) {
        double twiceArea = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
        double longest = Math.max(squared(a, b), Math.max(squared(b, c), squared(a, c)));
        return twiceArea <= THIN * longest;
    }

    private static double squared(double[] a, double[] b) {
        return (a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]);
    }
}
