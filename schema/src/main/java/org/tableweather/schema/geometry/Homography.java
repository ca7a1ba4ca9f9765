package org.tableweather.schema.geometry;

import static org.tableweather.schema.geometry.Matrices.inverse;
import static org.tableweather.schema.geometry.Matrices.product;
import static org.tableweather.schema.geometry.Matrices.times;
import static org.tableweather.schema.geometry.Matrices.transposed;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Between the plane of the table and a video frame, from four or more known points.
 *
 * <p>The map is the one that brings the known points nearest to their marks on the frame, in the sense of least squares.
 * Four points are met exactly, so nothing tells how good they are: mark more, and the residual does. The coefficients'
 * covariance takes the stated marking error, or the residual's when that is larger.
 *
 * <p>A lens that bends straight lines is no homography; the residual shows it.
 *
 * @source HartleyZisserman2004
 */
public final class Homography {

    private static final int COORDINATES = 2;

    private final PlaneScale table;
    private final PlaneScale frame;
    private final ProjectiveMap map;
    private final double[][] covariance;
    private final List<KnownPoint> points;
    private final double errorPx;

    private Homography(
            PlaneScale table,
            PlaneScale frame,
            ProjectiveMap map,
            ProjectiveFit fit,
            List<KnownPoint> points,
            double px) {
        this.table = table;
        this.frame = frame;
        this.map = map;
        this.points = List.copyOf(points);
        int freedom = COORDINATES * points.size() - ProjectiveMap.COEFFICIENTS;
        double residualPx = freedom == 0 ? 0 : Math.sqrt(fit.squares(map) / freedom) / frame.factor();
        this.errorPx = Math.max(px, residualPx);
        this.covariance = times(fit.unitCovariance(map), square(errorPx * frame.factor()));
    }

    /**
     * The homography of marked points.
     *
     * @param points known points of the table and their marks; at least four, no three on one line
     * @param markingErrorPx standard uncertainty of each coordinate of a mark, pixels, ≥ 0
     */
    public static HomographyFit fit(List<KnownPoint> points, double markingErrorPx) {
        KnownPointRules rules = new KnownPointRules(points);
        Optional<HomographyFit.Refused> fault = rules.fault(markingErrorPx);
        if (fault.isPresent()) {
            return fault.get();
        }
        PlaneScale table = PlaneScale.of(rules.onTable());
        PlaneScale frame = PlaneScale.of(rules.onFrame());
        List<double[]> from = scaled(rules.onTable(), table);
        ProjectiveFit fit = new ProjectiveFit(from, scaled(rules.onFrame(), frame));
        Optional<ProjectiveMap> map = fit.best();
        if (map.isEmpty()) {
            return new HomographyFit.Refused(HomographyFit.Reason.NO_FIT, "the marks fit no plane: mark them again");
        }
        ProjectiveMap found = map.get();
        if (!from.stream().allMatch(point -> found.depth(point) > 0)) {
            return new HomographyFit.Refused(
                    HomographyFit.Reason.MARKS_EXCHANGED,
                    "no camera sees the points in this arrangement: two marks are probably exchanged");
        }
        return new HomographyFit.Fitted(new Homography(table, frame, found, fit, points, markingErrorPx));
    }

    /** Where a point of the table is seen. */
    public PixelPoint onFrame(TablePoint point) {
        double[] image = frame.restored(map.image(table.scaled(point.xM(), point.yM())));
        return new PixelPoint(image[0], image[1]);
    }

    /**
     * Which point of the table is seen at a place.
     *
     * @return empty when the place is on or above the table's horizon
     */
    public Optional<TablePoint> onTable(PixelPoint place) {
        double[] scaled = origin(place);
        if (!(map.depth(scaled) > 0)) {
            return Optional.empty();
        }
        double[] point = table.restored(scaled);
        return Optional.of(new TablePoint(point[0], point[1]));
    }

    /**
     * A path marked on the frame, brought to the table with the covariance of all its coordinates: each mark's own error,
     * and the error of the homography that they share.
     *
     * @param marks in order
     * @param markingErrorPx standard uncertainty of each coordinate of a mark, pixels
     * @param timeErrorS standard uncertainty of each time, s
     * @param size of the table
     * @return empty when a mark is on or above the table's horizon, or nothing can be said of its place
     */
    public Optional<MarkedPath> trace(List<VideoMark> marks, double markingErrorPx, double timeErrorS, TableSize size) {
        List<Mark> traced = new ArrayList<>();
        for (VideoMark mark : marks) {
            Optional<TablePoint> at = onTable(mark.at());
            if (at.isEmpty()) {
                return Optional.empty();
            }
            traced.add(new Mark(mark.seq(), mark.point(), mark.rail(), at.get(), mark.timeS()));
        }
        double[][] joint = jointCovariance(marks, markingErrorPx);
        double largest = 0;
        for (int i = 0; i < joint.length; i++) {
            largest = Math.max(largest, joint[i][i]);
        }
        if (!Double.isFinite(largest)) {
            return Optional.empty();
        }
        double toleranceM = new MarkingError(Math.sqrt(largest), timeErrorS).toleranceM(size);
        return Optional.of(new MarkedPath(traced, MarkCovariance.of(joint), toleranceM, timeErrorS));
    }

    /** Root mean square distance on the frame between known points and their marks, pixels; 0 of four points. */
    public double residualRmsPx() {
        double sum = 0;
        for (KnownPoint point : points) {
            sum += square(onFrame(point.onTable()).distancePx(point.onFrame()));
        }
        return Math.sqrt(sum / points.size());
    }

    /** Root mean square distance on the table between known points and where their marks lie, mm; 0 of four points. */
    public double residualRmsMm() {
        double sum = 0;
        for (KnownPoint point : points) {
            // A known point lies in front of the camera, and so does its mark unless it is absurdly far off.
            double off =
                    onTable(point.onFrame()).map(point.onTable()::distanceM).orElse(Double.POSITIVE_INFINITY);
            sum += square(1000 * off);
        }
        return Math.sqrt(sum / points.size());
    }

    /** The known point whose mark lies farthest off, from 0. */
    public int worstPoint() {
        int worst = 0;
        for (int i = 1; i < points.size(); i++) {
            worst = residualPx(i) > residualPx(worst) ? i : worst;
        }
        return worst;
    }

    /** Distance on the frame between a known point and its mark, pixels. */
    public double residualPx(int point) {
        return onFrame(points.get(point).onTable()).distancePx(points.get(point).onFrame());
    }

    /** The standard uncertainty that stands for the marks of the known points: stated, or of the residual, pixels. */
    public double knownPointErrorPx() {
        return errorPx;
    }

    /** Covariance of the table coordinates x₀, y₀, x₁, y₁ ... of marks, m². */
    private double[][] jointCovariance(List<VideoMark> marks, double markingErrorPx) {
        int n = marks.size();
        double[][][] byMark = new double[n][][];
        double[][][] byMap = new double[n][][];
        for (int i = 0; i < n; i++) {
            double[] at = origin(marks.get(i).at());
            byMark[i] = inverse(map.byPoint(at));
            byMap[i] = product(byMark[i], map.byCoefficients(at));
        }
        double own = square(markingErrorPx * frame.factor());
        double[][] joint = new double[COORDINATES * n][COORDINATES * n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double[][] shared = product(product(byMap[i], covariance), transposed(byMap[j]));
                double[][] alone = times(product(byMark[i], transposed(byMark[j])), i == j ? own : 0);
                place(joint, i, j, shared, alone);
            }
        }
        return times(joint, 1 / square(table.factor()));
    }

    private static void place(double[][] joint, int i, int j, double[][] shared, double[][] alone) {
        for (int r = 0; r < COORDINATES; r++) {
            for (int c = 0; c < COORDINATES; c++) {
                joint[COORDINATES * i + r][COORDINATES * j + c] = shared[r][c] + alone[r][c];
            }
        }
    }

    private double[] origin(PixelPoint place) {
        return map.origin(frame.scaled(place.uPx(), place.vPx()));
    }

    private static List<double[]> scaled(List<double[]> points, PlaneScale scale) {
        return points.stream().map(point -> scale.scaled(point[0], point[1])).toList();
    }

    private static double square(double x) {
        return x * x;
    }
}
