package org.tableweather.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.tableweather.schema.diagram.ShotDiagram;
import org.tableweather.schema.equipment.PublishedTable;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code tableweather shots}, also {@code tableweather schema shots}. */
@Command(name = "shots", description = "Lists the built-in test shots; with an ID, tells how to shoot and log one.")
final class ShotsCommand extends Subcommand {
    @Parameters(arity = "0..1", paramLabel = "ID", description = "Which shot.")
    private String id;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            description = "Draw the table with this shot on it; - prints the drawing.")
    private Path svg;

    @Option(
            names = "--table",
            paramLabel = "SIZE",
            defaultValue = "pool-9ft",
            description = "Table to draw, see schema tables; standard: ${DEFAULT-VALUE}.")
    private String table;

    record Shots(List<Shot> shots) {}

    @Override
    public Integer call() throws IOException {
        List<Shot> shots = id == null ? ShotCatalogue.all() : List.of(shot(id));
        if (svg != null) {
            draw(shots);
            return ExitCodes.DONE;
        }
        if (json) {
            print(JsonText.ofSchema(new Shots(shots)));
        } else {
            print(id == null ? listed(shots) : described(shots.get(0)));
        }
        return ExitCodes.DONE;
    }

    private void draw(List<Shot> shots) throws IOException {
        if (id == null) {
            throw Failure.usage("--svg without a shot", "name one: shots ID --svg FILE");
        }
        PublishedTable size = PublishedTables.byId(table)
                .orElseThrow(() -> Failure.usage(
                        "there is no table " + table,
                        "choose one of: "
                                + String.join(
                                        ", ",
                                        PublishedTables.all().stream()
                                                .map(PublishedTable::id)
                                                .toList())));
        String drawing = new ShotDiagram(size.size(), size.pockets()).svg(shots.get(0), List.of());
        if (svg.toString().equals("-")) {
            print(drawing);
        } else {
            Files.writeString(svg, drawing);
            say("drew " + svg);
        }
    }

    /**
     * The shot of this id.
     *
     * @throws Failure when there is none; the remedy lists those there are
     */
    static Shot shot(String id) {
        return ShotCatalogue.byId(id)
                .orElseThrow(() -> Failure.usage(
                        "there is no shot " + id + " in the catalogue",
                        "choose one of: "
                                + String.join(
                                        ", ",
                                        ShotCatalogue.all().stream()
                                                .map(Shot::id)
                                                .toList())));
    }

    private static String listed(List<Shot> shots) {
        TextTable table = TextTable.of("shot", "kind", "rails", "title");
        for (Shot shot : shots) {
            table.row(
                    shot.id(),
                    shot.kind().schemaName(),
                    Integer.toString(shot.rails().size()),
                    shot.title().orElse(""));
        }
        return table.text();
    }

    private static String described(Shot shot) {
        StringBuilder text = new StringBuilder(shot.id() + " (" + shot.kind().schemaName() + "): "
                + shot.title().orElse("") + "\n");
        shot.start().ifPresent(start -> text.append(position("ball starts at", start)));
        shot.aim().ifPresent(aim -> text.append(position("aimed at", aim)));
        text.append("  rails, in order: ")
                .append(String.join(
                        ", ",
                        shot.rails().stream().map(rail -> rail.schemaName()).toList()))
                .append('\n');
        shot.target().ifPresent(target -> text.append(position("target", target)));
        shot.approachSpeedMps()
                .ifPresent(speed ->
                        text.append("  speed at the first rail: ").append(speed).append(" m/s\n"));
        text.append("  keep constant:\n");
        shot.keepConstant().forEach(what -> text.append("    - ").append(what).append('\n'));
        shot.howToLog().ifPresent(how -> text.append("  log: ").append(how).append('\n'));
        return text.toString();
    }

    private static String position(String what, Shot.Position position) {
        return "  " + what + ": x " + position.xDia() + " (0..8 along, from the head rail), y " + position.yDia()
                + " (0..4 across) diamonds, of the ball's centre\n";
    }
}
