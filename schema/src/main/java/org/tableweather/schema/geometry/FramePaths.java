package org.tableweather.schema.geometry;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Contact;

/** Rows of {@code contacts.csv} in pixels, brought to the table by the known points under {@code marks}. */
public final class FramePaths {
    /** Standard uncertainty of a mark where none is stated, pixels (common practice, no source). */
    public static final double USUAL_ERROR_PX = 1;

    private FramePaths() {}

    /** Whether a row is marked on a video frame. */
    public static boolean isOnFrame(Contact contact) {
        return Double.isFinite(contact.xPx()) && Double.isFinite(contact.yPx());
    }

    /**
     * The known points that belong to a row: its camera's, those of its session before those of every session.
     *
     * @param marks all of a contribution
     * @param contact a row
     * @return empty when there are none, or more than one could be meant
     */
    public static Optional<CameraMarks> marksOf(List<CameraMarks> marks, Contact contact) {
        List<CameraMarks> possible = marks.stream()
                .filter(entry -> contact.camera().isEmpty() || entry.camera().equals(contact.camera()))
                .filter(entry ->
                        entry.session().isEmpty() || entry.session().get().equals(contact.session()))
                .toList();
        List<CameraMarks> own =
                possible.stream().filter(entry -> entry.session().isPresent()).toList();
        List<CameraMarks> left = own.isEmpty() ? possible : own;
        return left.size() == 1 ? Optional.of(left.get(0)) : Optional.empty();
    }

    /**
     * The homography of known points; its residual tells how well they fit.
     *
     * @param marks known points of one camera
     * @param size of the table
     */
    public static HomographyFit fit(CameraMarks marks, TableSize size) {
        List<KnownPoint> points = marks.points().stream()
                .map(point -> new KnownPoint(
                        size.point(point.xDia(), point.yDia()), new PixelPoint(point.xPx(), point.yPx())))
                .toList();
        return Homography.fit(points, errorPx(marks));
    }

    /**
     * The path of one trial on the table.
     *
     * @param contacts the rows of one trial, all in pixels of this camera
     * @param marks the camera's known points, of which the homography is
     * @param homography from {@link #fit}
     * @param timeErrorS standard uncertainty of each time, s
     * @param size of the table
     * @return empty when a mark is on or above the table's horizon
     */
    public static Optional<MarkedPath> path(
            List<Contact> contacts, CameraMarks marks, Homography homography, double timeErrorS, TableSize size) {
        List<VideoMark> seen = contacts.stream()
                .sorted(Comparator.comparingInt(Contact::seq))
                .map(row -> new VideoMark(
                        row.seq(), row.point(), row.rail(), new PixelPoint(row.xPx(), row.yPx()), row.timeS()))
                .toList();
        return homography.trace(seen, errorPx(marks), timeErrorS, size);
    }

    private static double errorPx(CameraMarks marks) {
        return marks.errorPx().orElse(USUAL_ERROR_PX);
    }
}
