package org.tableweather.analyzers.host;

/**
 * The paper of a chart.
 *
 * @param widthPx CSS pixels, at least 240
 * @param heightPx CSS pixels, at least 200
 * @param fontPx height of ordinary text, CSS pixels
 */
public record ChartSize(int widthPx, int heightPx, int fontPx) {

    public ChartSize {
        if (widthPx < 240 || heightPx < 200 || fontPx < 6) {
            throw new IllegalArgumentException("chart of " + widthPx + " x " + heightPx + " px with text of " + fontPx
                    + " px: it needs at least 240 x 200 px and text of 6 px");
        }
    }

    /** For a page or a printout. */
    public static ChartSize page() {
        return new ChartSize(960, 640, 14);
    }

    /** For a phone held upright: 360 px wide. */
    public static ChartSize phone() {
        return new ChartSize(360, 540, 11);
    }
}
