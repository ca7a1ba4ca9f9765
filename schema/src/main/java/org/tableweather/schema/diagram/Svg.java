package org.tableweather.schema.diagram;

import java.util.Locale;

/** SVG elements as text; coordinates in drawing units, written with two decimals at most. */
final class Svg {

    private final StringBuilder text = new StringBuilder();

    static String escaped(String plain) {
        return plain.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    static String number(double value) {
        double rounded = Math.round(value * 100) / 100.0;
        if (rounded == Math.rint(rounded)) {
            return Long.toString((long) rounded);
        }
        return String.format(Locale.ROOT, "%.2f", rounded).replaceAll("0$", "");
    }

    Svg raw(String markup) {
        text.append(markup).append('\n');
        return this;
    }

    Svg rect(double x, double y, double width, double height, String attributes) {
        return raw("<rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + number(width) + "\" height=\""
                + number(height) + "\" " + attributes + "/>");
    }

    Svg circle(double x, double y, double radius, String attributes) {
        return raw("<circle cx=\"" + number(x) + "\" cy=\"" + number(y) + "\" r=\"" + number(radius) + "\" "
                + attributes + "/>");
    }

    Svg line(double x1, double y1, double x2, double y2, String attributes) {
        return raw("<line x1=\"" + number(x1) + "\" y1=\"" + number(y1) + "\" x2=\"" + number(x2) + "\" y2=\""
                + number(y2) + "\" " + attributes + "/>");
    }

    /** A path through the points x₀, y₀, x₁, y₁ ... */
    Svg polyline(double[] points, String attributes) {
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < points.length; i += 2) {
            list.append(i == 0 ? "" : " ").append(number(points[i])).append(',').append(number(points[i + 1]));
        }
        return raw("<polyline points=\"" + list + "\" " + attributes + "/>");
    }

    Svg polygon(double[] points, String attributes) {
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < points.length; i += 2) {
            list.append(i == 0 ? "" : " ").append(number(points[i])).append(',').append(number(points[i + 1]));
        }
        return raw("<polygon points=\"" + list + "\" " + attributes + "/>");
    }

    Svg label(double x, double y, String plain, String attributes) {
        return raw("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" " + attributes + ">" + escaped(plain)
                + "</text>");
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
