package org.tableweather.schema.geometry;

import java.util.Optional;
import org.tableweather.schema.record.Contact;
import org.tableweather.schema.record.Rail;

/**
 * One marked point of a path, in metres.
 *
 * @param seq order along the path
 * @param point what happens there
 * @param rail which rail, for a rail contact
 * @param at the ball's centre
 * @param timeS s; NaN when not known
 */
public record Mark(int seq, Contact.Point point, Optional<Rail> rail, TablePoint at, double timeS) {

    boolean isRail() {
        return point == Contact.Point.RAIL;
    }

    Mark movedTo(TablePoint place) {
        return new Mark(seq, point, rail, place, timeS);
    }
}
