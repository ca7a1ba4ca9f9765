package org.tableweather.schema.folder;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.check.Findings;
import org.tableweather.schema.check.GeometryChecks;
import org.tableweather.schema.check.Place;
import org.tableweather.schema.geometry.Homography;
import org.tableweather.schema.geometry.KnownPoint;
import org.tableweather.schema.geometry.MarkedPath;
import org.tableweather.schema.geometry.MarkingError;
import org.tableweather.schema.geometry.PixelPoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.geometry.VideoMark;
import org.tableweather.schema.record.CameraMarks;
import org.tableweather.schema.record.Contact;

/** Brings marks on video frames to the table: one homography for each camera and session. */
final class Cameras {
    /** Standard uncertainty of a mark when none is stated, pixels: common practice, no source. */
    private static final double ERROR_PX = 2;
    /** Known points that fit worse than this are warned of, mm. */
    private static final double WORST_FIT_MM = 10;

    private final List<CameraMarks> marks;
    private final Map<Key, Optional<Fitted>> fits = new HashMap<>();

    private record Key(String session, String camera) {}

    private record Fitted(Homography homography, double errorPx) {}

    Cameras(List<CameraMarks> marks) {
        this.marks = marks;
    }

    /** Whether all points of a path are marked on a frame and nowhere else. */
    static boolean areFrames(List<Contact> contacts) {
        return contacts.stream()
                .allMatch(contact -> Double.isNaN(contact.xDia() + contact.yDia())
                        && Double.isNaN(contact.xM() + contact.yM())
                        && !Double.isNaN(contact.xPx() + contact.yPx()));
    }

    /** The path on the table; empty when the camera cannot tell, which is reported once for a session. */
    Optional<MarkedPath> path(List<Contact> contacts, TableSize size, Findings findings) {
        Contact first = contacts.get(0);
        Key key = new Key(first.session(), first.camera());
        Optional<Fitted> fitted = fits.get(key);
        if (fitted == null) {
            fitted = fit(key, size, findings);
            fits.put(key, fitted);
        }
        List<VideoMark> onFrame = contacts.stream()
                .map(contact -> new VideoMark(
                        contact.seq(),
                        contact.point(),
                        contact.rail(),
                        new PixelPoint(contact.xPx(), contact.yPx()),
                        contact.timeS()))
                .toList();
        double timeErrorS = MarkingError.byEye(size).timeS();
        Optional<MarkedPath> path =
                fitted.flatMap(camera -> camera.homography().trace(onFrame, camera.errorPx(), timeErrorS, size));
        if (fitted.isPresent() && path.isEmpty()) {
            findings.add(
                    GeometryChecks.CAMERA_UNFIT,
                    Place.file(ContactRows.FILE),
                    first.session() + " " + first.trial(),
                    () -> "a mark of trial " + first.trial() + " of session " + first.session() + " lies where camera '"
                            + first.camera() + "' sees no table");
        }
        return path;
    }

    private Optional<Fitted> fit(Key key, TableSize size, Findings findings) {
        for (int i = 0; i < marks.size(); i++) {
            CameraMarks entry = marks.get(i);
            if (entry.camera().equals(key.camera())
                    && entry.session().map(key.session()::equals).orElse(true)) {
                return fit(entry, "/marks/" + i, size, findings);
            }
        }
        findings.add(
                GeometryChecks.CAMERA_UNKNOWN,
                Place.file(ContactRows.FILE),
                key.camera(),
                () -> "the points of session " + key.session() + " are marked on frames of camera '" + key.camera()
                        + "', which has no entry in marks");
        return Optional.empty();
    }

    private static Optional<Fitted> fit(CameraMarks entry, String pointer, TableSize size, Findings findings) {
        double errorPx = entry.errorPx().orElse(ERROR_PX);
        List<KnownPoint> points = entry.points().stream()
                .map(seen ->
                        new KnownPoint(size.point(seen.xDia(), seen.yDia()), new PixelPoint(seen.xPx(), seen.yPx())))
                .toList();
        return Homography.fit(points, errorPx)
                .fold(
                        fitted -> {
                            tellResidual(fitted.homography(), pointer, findings);
                            return Optional.of(new Fitted(fitted.homography(), errorPx));
                        },
                        refused -> {
                            findings.add(
                                    GeometryChecks.CAMERA_UNFIT,
                                    Place.json(pointer + "/points"),
                                    entry.camera(),
                                    refused::detail);
                            return Optional.empty();
                        });
    }

    private static void tellResidual(Homography homography, String pointer, Findings findings) {
        double residualMm = homography.residualRmsMm();
        if (residualMm > WORST_FIT_MM) {
            int worst = homography.worstPoint();
            findings.add(
                    GeometryChecks.CAMERA_RESIDUAL,
                    Place.json(pointer + "/points/" + worst),
                    Math.round(residualMm * 10) / 10.0 + " mm",
                    () -> "the known points fit to " + Math.round(residualMm * 10) / 10.0
                            + " mm; this one is the farthest off");
        }
    }
}
