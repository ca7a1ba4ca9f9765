package org.tableweather.schema.geometry;

import org.tableweather.schema.record.Rail;

/**
 * From the table to one of its mirror images and back: {@code x' = sx·x + ox, y' = sy·y + oy} with signs ±1.
 *
 * @param sx ±1
 * @param ox m
 * @param sy ±1
 * @param oy m
 */
record Fold(int sx, double ox, int sy, double oy) {

    /** The table itself. */
    static final Fold NONE = new Fold(1, 0, 1, 0);

    /** The image beyond a rail of this image: first mirror in the table's frame about the rail's line, then this. */
    Fold beyond(Rail rail, TableSize table) {
        double line = 2 * table.lineM(rail);
        return new RailFrame(rail).isShort()
                ? new Fold(-sx, ox + sx * line, sy, oy)
                : new Fold(sx, ox, -sy, oy + sy * line);
    }

    TablePoint unfolded(TablePoint onTable) {
        return new TablePoint(sx * onTable.xM() + ox, sy * onTable.yM() + oy);
    }

    TablePoint folded(TablePoint inImage) {
        return new TablePoint(sx * (inImage.xM() - ox), sy * (inImage.yM() - oy));
    }
}
