package org.tableweather.schema.diagram;

import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;

/** Where the table lies on the drawing: the head rail at the left, the near rail below, a diamond 100 units long. */
record Sheet(TableSize table) {

    /** Units a diamond along. */
    static final double DIAMOND = 100;

    /** Width of the rails around the bed, units. */
    static final double RAIL = 44;

    /** Free edge around the rails, units. */
    static final double EDGE = 26;

    /** Room for the caption below, units. */
    static final double CAPTION = 62;

    double unitsPerMetre() {
        return DIAMOND / table.diamondAlongM();
    }

    double bedWidth() {
        return table.playingLengthM() * unitsPerMetre();
    }

    double bedHeight() {
        return table.playingWidthM() * unitsPerMetre();
    }

    double left() {
        return EDGE + RAIL;
    }

    double top() {
        return EDGE + RAIL;
    }

    double width() {
        return bedWidth() + 2 * (EDGE + RAIL);
    }

    double height() {
        return bedHeight() + 2 * (EDGE + RAIL) + CAPTION;
    }

    double x(TablePoint point) {
        return left() + point.xM() * unitsPerMetre();
    }

    double y(TablePoint point) {
        return top() + bedHeight() - point.yM() * unitsPerMetre();
    }

    double ballRadius() {
        return table.ballRadiusM() * unitsPerMetre();
    }
}
