package org.tableweather.analyzers.host;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Stroke;

/**
 * How a line looks: apart from others by its dashes as well as by its ink.
 *
 * @param ink colour
 * @param dashes in line widths; empty for a solid line
 */
record LineInk(Color ink, float... dashes) {

    private static final Color[] INKS = {
        new Color(0x10161d), new Color(0x9c4a00), new Color(0x1f5680), new Color(0x6b123f), new Color(0x2f6b34)
    };
    private static final float[][] DASHES = {{}, {5, 3}, {1, 2.5f}, {7, 3, 1, 3}, {3, 2}};
    private static final int BAND_ALPHA = 45;

    LineInk {
        dashes = dashes.clone();
    }

    @Override
    public float[] dashes() {
        return dashes.clone();
    }

    /** The look of the line with this index. */
    static LineInk of(int index) {
        return new LineInk(INKS[index % INKS.length], DASHES[index % DASHES.length]);
    }

    Stroke stroke(float widthPx) {
        if (dashes.length == 0) {
            return new BasicStroke(widthPx, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
        }
        float[] scaled = dashes.clone();
        for (int i = 0; i < scaled.length; i++) {
            scaled[i] *= widthPx;
        }
        return new BasicStroke(widthPx, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, scaled, 0);
    }

    /** The band that belongs to the line. */
    Color band() {
        return new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), BAND_ALPHA);
    }
}
