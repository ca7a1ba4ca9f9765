package org.tableweather.schema.diagram;

/** The colours and strokes of a drawing; text and lines keep a contrast of at least 4.5 : 1 to what is behind them. */
final class Ink {

    static final String PAPER = "#fdfcf8";
    static final String BED = "#e9efec";
    static final String WOOD = "#c9b8a4";
    static final String DARK = "#22313a";
    static final String QUIET = "#4d5d66";
    static final String PATH = "#8c1d40";
    static final String ATTEMPT = "#2f6690";
    static final String BALL = "#ffffff";

    private Ink() {}

    static String stroke(String colour, double width) {
        return "fill=\"none\" stroke=\"" + colour + "\" stroke-width=\"" + Svg.number(width) + "\"";
    }

    static String fill(String colour) {
        return "fill=\"" + colour + "\"";
    }

    static String text(String colour, int size, String anchor) {
        return "fill=\"" + colour + "\" font-size=\"" + size + "\" text-anchor=\"" + anchor + "\"";
    }
}
