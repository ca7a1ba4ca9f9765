package org.tableweather.schema.diagram;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.tableweather.schema.geometry.MirrorPath;
import org.tableweather.schema.geometry.NominalPath;
import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Rail;
import org.tableweather.schema.record.Shot;

/**
 * A test shot on a table of a given size: start, nominal path, angles, target, and marked attempts if there are any.
 *
 * <p>The drawing carries its own title and description for screen readers, and needs no style sheet.
 */
public final class ShotDiagram {

    private static final int RACK_ROWS = 5;

    private final TableSize table;
    private final PocketMouths pockets;

    /**
     * For one table.
     *
     * @param table its size
     * @param pockets what to leave open; {@link PocketMouths#NONE} for a table without
     */
    public ShotDiagram(TableSize table, PocketMouths pockets) {
        this.table = table;
        this.pockets = pockets;
    }

    /**
     * The drawing as one SVG document.
     *
     * @param shot what to draw
     * @param attempts marked paths to lay under it, ball's centre; may be empty
     */
    public String svg(Shot shot, List<List<TablePoint>> attempts) {
        return svg(shot, attempts, "shot");
    }

    /**
     * The drawing as one of several in a page.
     *
     * @param shot what to draw
     * @param attempts marked paths to lay under it, ball's centre; may be empty
     * @param prefix of the ids in it, its own in the page
     */
    public String svg(Shot shot, List<List<TablePoint>> attempts, String prefix) {
        Sheet sheet = new Sheet(table);
        MirrorPath path = NominalPath.of(shot, table);
        Svg svg = new Svg();
        open(svg, sheet, shot, path, prefix);
        svg.rect(0, 0, sheet.width(), sheet.height(), Ink.fill(Ink.PAPER));
        new TableDrawing(sheet, pockets).drawOn(svg);
        PathDrawing drawing = new PathDrawing(sheet);
        attempts.forEach(marks -> drawing.attempt(svg, marks));
        found(path).ifPresent(nominal -> drawing.drawOn(svg, nominal));
        places(svg, drawing, shot, path);
        caption(svg, sheet, shot, path);
        return svg.raw("</svg>").toString();
    }

    private void open(Svg svg, Sheet sheet, Shot shot, MirrorPath path, String prefix) {
        svg.raw("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + Svg.number(sheet.width()) + " "
                + Svg.number(sheet.height()) + "\" role=\"img\" aria-labelledby=\"" + prefix + "-title " + prefix
                + "-desc\""
                + " font-family=\"'DejaVu Sans', Verdana, sans-serif\">");
        svg.raw("<title id=\"" + prefix + "-title\">" + Svg.escaped(title(shot)) + "</title>");
        svg.raw("<desc id=\"" + prefix + "-desc\">" + Svg.escaped(inWords(shot, path)) + "</desc>");
    }

    private void places(Svg svg, PathDrawing drawing, Shot shot, MirrorPath path) {
        if (shot.kind() == Kind.BREAK) {
            shot.aim().ifPresent(apex -> rack(svg, drawing, table.point(apex)));
        }
        if (shot.targetRail().isPresent()) {
            found(path)
                    .ifPresent(nominal ->
                            drawing.target(svg, last(nominal), shot.targetRail().get()));
        }
        shot.start().ifPresent(start -> drawing.start(svg, table.heldInside(table.point(start))));
    }

    /** Fifteen balls behind the front one: rows a ball's diameter times √3/2 apart. */
    private void rack(Svg svg, PathDrawing drawing, TablePoint apex) {
        double ball = table.ballDiameterM();
        for (int row = 0; row < RACK_ROWS; row++) {
            for (int i = 0; i <= row; i++) {
                double x = apex.xM() + row * ball * Math.sqrt(3) / 2;
                double y = apex.yM() + (i - row / 2.0) * ball;
                drawing.ball(
                        svg,
                        new TablePoint(x, y),
                        Ink.fill(Ink.BALL) + " stroke=\"" + Ink.DARK + "\" stroke-width=\"1.4\"");
            }
        }
    }

    private void caption(Svg svg, Sheet sheet, Shot shot, MirrorPath path) {
        double y = sheet.height() - Sheet.CAPTION + 22;
        svg.label(Sheet.EDGE, y, title(shot), Ink.text(Ink.DARK, 19, "start") + " font-weight=\"bold\"");
        svg.label(Sheet.EDGE, y + 25, inWords(shot, path), Ink.text(Ink.QUIET, 14, "start"));
    }

    private static String title(Shot shot) {
        return shot.id() + shot.title().map(words -> ": " + words).orElse("");
    }

    private String inWords(Shot shot, MirrorPath path) {
        StringBuilder words = new StringBuilder();
        shot.start()
                .ifPresent(start -> words.append("Start x ")
                        .append(dia(start.xDia()))
                        .append(", y ")
                        .append(dia(start.yDia()))
                        .append("."));
        found(path).ifPresent(nominal -> nominalInWords(words, shot, nominal));
        return words.toString();
    }

    private void nominalInWords(StringBuilder words, Shot shot, MirrorPath.Found nominal) {
        for (int i = 0; i < nominal.rails().size(); i++) {
            words.append(i == 0 ? " A perfect rail: " : ", ");
            words.append(onRail(nominal.rails().get(i), nominal.contact(i)));
        }
        if (nominal.rails().size() > 0) {
            words.append(".");
        }
        shot.targetRail()
                .ifPresent(rail -> words.append(" Target: ")
                        .append(onRail(rail, last(nominal)))
                        .append("."));
        if (shot.targetRail().isEmpty() && shot.aim().isPresent()) {
            words.append(" Aim x ").append(dia(shot.aim().get().xDia())).append(", y ");
            words.append(dia(shot.aim().get().yDia())).append(".");
        }
    }

    private String onRail(Rail rail, TablePoint at) {
        Shot.Position place = table.diamonds(at);
        boolean shortRail = rail == Rail.HEAD || rail == Rail.FOOT;
        return rail.schemaName() + " " + dia(shortRail ? place.yDia() : place.xDia());
    }

    private static String dia(double diamonds) {
        return String.format(Locale.ROOT, "%.2f", diamonds);
    }

    private static TablePoint last(MirrorPath.Found path) {
        return path.points().get(path.points().size() - 1);
    }

    private static Optional<MirrorPath.Found> found(MirrorPath path) {
        return path.fold(Optional::of, impossible -> Optional.empty());
    }
}
