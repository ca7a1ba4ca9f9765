package org.tableweather.schema.geometry;

import org.tableweather.schema.record.Rail;

/**
 * The openings of the pockets, nose to nose: no rail to touch there.
 *
 * @param cornerM across the mouth of a corner pocket, m; 0 without pockets
 * @param sideM across the mouth of a side pocket, m; 0 without pockets
 */
public record PocketMouths(double cornerM, double sideM) {

    /** A table without pockets. */
    public static final PocketMouths NONE = new PocketMouths(0, 0);

    /** How much of each rail a corner pocket takes, m: its mouth lies at 45° to both rails. */
    public double cornerAlongRailM() {
        return cornerM / Math.sqrt(2);
    }

    /**
     * How far along its rail a contact lies from the nearest pocket's edge.
     *
     * @param table its size
     * @param rail which rail is touched
     * @param contact ball's centre
     * @return m; negative in a mouth
     */
    public double clearanceM(TableSize table, Rail rail, TablePoint contact) {
        RailFrame frame = new RailFrame(rail);
        double along = frame.along(contact);
        double length = frame.isShort() ? table.playingWidthM() : table.playingLengthM();
        double corner = Math.min(along, length - along) - cornerAlongRailM();
        return frame.isShort() || sideM == 0 ? corner : Math.min(corner, Math.abs(along - length / 2) - sideM / 2);
    }
}
