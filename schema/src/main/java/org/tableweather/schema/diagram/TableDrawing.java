package org.tableweather.schema.diagram;

import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Rail;

/** The empty table: bed, rails, diamonds with their numbers, pockets, and the line that ball centres cannot cross. */
final class TableDrawing {

    private static final int SIDE_POCKET_DIAMOND = TableSize.DIAMONDS_ALONG / 2;

    private final Sheet sheet;
    private final PocketMouths pockets;

    TableDrawing(Sheet sheet, PocketMouths pockets) {
        this.sheet = sheet;
        this.pockets = pockets;
    }

    void drawOn(Svg svg) {
        svg.rect(
                sheet.left() - Sheet.RAIL,
                sheet.top() - Sheet.RAIL,
                sheet.bedWidth() + 2 * Sheet.RAIL,
                sheet.bedHeight() + 2 * Sheet.RAIL,
                "rx=\"14\" " + Ink.fill(Ink.WOOD));
        svg.rect(sheet.left(), sheet.top(), sheet.bedWidth(), sheet.bedHeight(), Ink.fill(Ink.BED));
        svg.rect(sheet.left(), sheet.top(), sheet.bedWidth(), sheet.bedHeight(), Ink.stroke(Ink.DARK, 2.5));
        centreLines(svg);
        drawPockets(svg);
        diamonds(svg);
        railNames(svg);
    }

    private void centreLines(Svg svg) {
        double radius = sheet.ballRadius();
        svg.rect(
                sheet.left() + radius,
                sheet.top() + radius,
                sheet.bedWidth() - 2 * radius,
                sheet.bedHeight() - 2 * radius,
                Ink.stroke(Ink.QUIET, 0.8) + " stroke-dasharray=\"2 4\"");
    }

    private void drawPockets(Svg svg) {
        if (pockets.cornerM() == 0) {
            return;
        }
        double corner = pockets.cornerM() / 2 * sheet.unitsPerMetre();
        double side = pockets.sideM() / 2 * sheet.unitsPerMetre();
        double middle = sheet.left() + sheet.bedWidth() / 2;
        for (double y : new double[] {sheet.top(), sheet.top() + sheet.bedHeight()}) {
            svg.circle(sheet.left(), y, corner, Ink.fill(Ink.DARK));
            svg.circle(sheet.left() + sheet.bedWidth(), y, corner, Ink.fill(Ink.DARK));
            double behind = y == sheet.top() ? -side / 2 : side / 2;
            svg.circle(middle, y + behind, side, Ink.fill(Ink.DARK));
        }
    }

    private void diamonds(Svg svg) {
        for (int i = 1; i < TableSize.DIAMONDS_ALONG; i++) {
            TablePoint near = sheet.table().point(i, 0);
            TablePoint far = sheet.table().point(i, TableSize.DIAMONDS_ACROSS);
            if (i != SIDE_POCKET_DIAMOND || pockets.sideM() == 0) {
                diamond(svg, sheet.x(near), sheet.y(near) + Sheet.RAIL / 2);
                diamond(svg, sheet.x(far), sheet.y(far) - Sheet.RAIL / 2);
            }
            number(svg, i, sheet.x(near), sheet.y(near) + Sheet.RAIL + 16);
        }
        for (int i = 1; i < TableSize.DIAMONDS_ACROSS; i++) {
            TablePoint head = sheet.table().point(0, i);
            TablePoint foot = sheet.table().point(TableSize.DIAMONDS_ALONG, i);
            diamond(svg, sheet.x(head) - Sheet.RAIL / 2, sheet.y(head));
            diamond(svg, sheet.x(foot) + Sheet.RAIL / 2, sheet.y(foot));
            number(svg, i, sheet.x(head) - Sheet.RAIL - 12, sheet.y(head) + 5);
        }
    }

    private static void diamond(Svg svg, double x, double y) {
        svg.polygon(new double[] {x - 5, y, x, y - 7, x + 5, y, x, y + 7}, Ink.fill(Ink.DARK));
    }

    private static void number(Svg svg, int diamond, double x, double y) {
        svg.label(x, y, Integer.toString(diamond), Ink.text(Ink.QUIET, 15, "middle"));
    }

    private void railNames(Svg svg) {
        double x = sheet.left() + Sheet.DIAMOND / 2;
        double y = sheet.top() + sheet.bedHeight() - Sheet.DIAMOND / 2;
        String style = Ink.text(Ink.DARK, 15, "middle") + " font-style=\"italic\"";
        svg.label(x, sheet.top() - 17, Rail.FAR.schemaName() + " rail", style);
        svg.label(x, sheet.top() + sheet.bedHeight() + 27, Rail.NEAR.schemaName() + " rail", style);
        upright(svg, sheet.left() - 17, y, Rail.HEAD.schemaName() + " rail", style);
        upright(svg, sheet.left() + sheet.bedWidth() + 27, y, Rail.FOOT.schemaName() + " rail", style);
    }

    private static void upright(Svg svg, double x, double y, String plain, String style) {
        String turn = " transform=\"rotate(-90 " + Svg.number(x) + " " + Svg.number(y) + ")\"";
        svg.label(x, y, plain, style + turn);
    }
}
