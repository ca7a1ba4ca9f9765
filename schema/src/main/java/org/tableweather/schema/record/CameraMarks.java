package org.tableweather.schema.record;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Known points of a table on the frame of a camera that does not move: what pixels of {@code contacts.csv} are reduced with.
 *
 * @param camera named by the rows of {@code contacts.csv}; a camera that was moved is another one
 * @param session id of the only session that it belongs to; without it, every session that is marked with this camera
 * @param errorPx standard uncertainty of each coordinate of a mark, pixels
 * @param points four or more, no three of four on one line; six or more tell how well they fit
 */
public record CameraMarks(String camera, Optional<String> session, OptionalDouble errorPx, List<SeenPoint> points) {

    public CameraMarks {
        points = points == null ? List.of() : List.copyOf(points);
    }

    /**
     * A known point of the table and where it is seen.
     *
     * @param xDia along the long rail from the head rail, diamonds; 0 and 8 are the nose lines
     * @param yDia across, diamonds; 0 and 4 are the nose lines
     * @param xPx pixels to the right from the frame's left edge
     * @param yPx pixels downwards from the frame's upper edge
     */
    public record SeenPoint(double xDia, double yDia, double xPx, double yPx) {}
}
