package org.tableweather.schema.diagram;

import java.util.List;
import java.util.Locale;
import org.tableweather.schema.geometry.MirrorPath;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.record.Rail;

/** A path on the table: legs with arrows, the ball at each contact, the normal and the angles there. */
final class PathDrawing {

    private static final double NORMAL = 74;
    private static final double ARC = 44;
    private static final double LABEL = 66;
    private static final double STRAIGHT_DEG = 3;

    private final Sheet sheet;

    PathDrawing(Sheet sheet) {
        this.sheet = sheet;
    }

    void drawOn(Svg svg, MirrorPath.Found path) {
        for (int i = 0; i < path.rails().size(); i++) {
            angle(svg, path, i);
        }
        legs(svg, path.points(), Ink.stroke(Ink.PATH, 3.2) + " stroke-linejoin=\"round\"");
        for (int i = 1; i < path.points().size(); i++) {
            arrow(svg, path.points().get(i - 1), path.points().get(i));
        }
        for (int i = 0; i < path.rails().size(); i++) {
            ball(svg, path.contact(i), Ink.stroke(Ink.PATH, 1.6));
        }
    }

    void attempt(Svg svg, List<TablePoint> marks) {
        legs(svg, marks, Ink.stroke(Ink.ATTEMPT, 1.4) + " stroke-opacity=\"0.55\" stroke-linejoin=\"round\"");
    }

    void start(Svg svg, TablePoint start) {
        ball(svg, start, Ink.fill(Ink.BALL) + " stroke=\"" + Ink.DARK + "\" stroke-width=\"2\"");
        svg.circle(sheet.x(start), sheet.y(start), 1.8, Ink.fill(Ink.DARK));
    }

    /** A wedge on the rail that points at the place where the ball should come down. */
    void target(Svg svg, TablePoint target, Rail rail) {
        double[] in = inward(rail);
        double x = sheet.x(target) - in[0] * sheet.ballRadius();
        double y = sheet.y(target) - in[1] * sheet.ballRadius();
        double backX = x - in[0] * 22;
        double backY = y - in[1] * 22;
        svg.polygon(
                new double[] {x, y, backX - in[1] * 9, backY - in[0] * 9, backX + in[1] * 9, backY + in[0] * 9},
                Ink.fill(Ink.PATH));
        ball(svg, target, Ink.stroke(Ink.PATH, 1.6) + " stroke-dasharray=\"4 3\"");
    }

    void ball(Svg svg, TablePoint at, String style) {
        svg.circle(sheet.x(at), sheet.y(at), sheet.ballRadius(), style);
    }

    private void legs(Svg svg, List<TablePoint> points, String style) {
        double[] flat = new double[2 * points.size()];
        for (int i = 0; i < points.size(); i++) {
            flat[2 * i] = sheet.x(points.get(i));
            flat[2 * i + 1] = sheet.y(points.get(i));
        }
        svg.polyline(flat, style);
    }

    /** An arrow head at 60 % of a leg, clear of the labels at its ends. */
    private void arrow(Svg svg, TablePoint from, TablePoint to) {
        double dx = sheet.x(to) - sheet.x(from);
        double dy = sheet.y(to) - sheet.y(from);
        double length = Math.hypot(dx, dy);
        double tipX = sheet.x(from) + 0.6 * dx;
        double tipY = sheet.y(from) + 0.6 * dy;
        double ux = dx / length;
        double uy = dy / length;
        svg.polygon(
                new double[] {
                    tipX,
                    tipY,
                    tipX - 17 * ux - 7 * uy,
                    tipY - 17 * uy + 7 * ux,
                    tipX - 17 * ux + 7 * uy,
                    tipY - 17 * uy - 7 * ux
                },
                Ink.fill(Ink.PATH));
    }

    private void angle(Svg svg, MirrorPath.Found path, int i) {
        double[] in = inward(path.rails().get(i));
        TablePoint at = path.contact(i);
        double x = sheet.x(at);
        double y = sheet.y(at);
        svg.line(
                x, y, x + in[0] * NORMAL, y + in[1] * NORMAL, Ink.stroke(Ink.QUIET, 1.2) + " stroke-dasharray=\"5 4\"");
        if (path.approachAngleDeg(i) > STRAIGHT_DEG) {
            arc(svg, at, path.points().get(i), in);
            arc(svg, at, path.points().get(i + 2), in);
        }
        String degrees = String.format(Locale.ROOT, "%.1f°", path.approachAngleDeg(i));
        svg.label(
                x + in[0] * (NORMAL + LABEL / 3),
                y + in[1] * (NORMAL + LABEL / 4) + 5,
                degrees,
                Ink.text(Ink.DARK, 16, "middle") + " paint-order=\"stroke\" stroke=\"" + Ink.BED
                        + "\" stroke-width=\"5\"");
    }

    /** The arc between the normal and the leg to another point. */
    private void arc(Svg svg, TablePoint at, TablePoint other, double[] in) {
        double x = sheet.x(at);
        double y = sheet.y(at);
        double dx = sheet.x(other) - x;
        double dy = sheet.y(other) - y;
        double length = Math.hypot(dx, dy);
        double endX = x + ARC * dx / length;
        double endY = y + ARC * dy / length;
        int sweep = in[0] * dy - in[1] * dx > 0 ? 1 : 0;
        String arcTo = " A" + Svg.number(ARC) + " " + Svg.number(ARC) + " 0 0 " + sweep + " ";
        svg.raw("<path d=\"M" + Svg.number(x + in[0] * ARC) + " " + Svg.number(y + in[1] * ARC) + arcTo
                + Svg.number(endX) + " " + Svg.number(endY) + "\" " + Ink.stroke(Ink.QUIET, 1.4) + "/>");
    }

    /** The direction from a rail into the table, on the drawing, where y runs down. */
    private static double[] inward(Rail rail) {
        return switch (rail) {
            case HEAD -> new double[] {1, 0};
            case FOOT -> new double[] {-1, 0};
            case NEAR -> new double[] {0, -1};
            case FAR -> new double[] {0, 1};
        };
    }
}
