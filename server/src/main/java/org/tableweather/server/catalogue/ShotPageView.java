package org.tableweather.server.catalogue;

import java.util.List;
import java.util.Optional;
import org.tableweather.schema.diagram.ShotDiagram;
import org.tableweather.schema.equipment.PublishedTable;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.table.Column;
import org.tableweather.schema.table.KindOutcomes;
import org.tableweather.server.web.Words;

/**
 * One shot as a page shows it.
 *
 * @param id as trials cite it
 * @param title in words; empty when nobody gave one
 * @param kind what it tests; empty when it is not of the catalogue
 * @param diagram SVG; empty when it is not of the catalogue
 * @param table name of the table that it is drawn for
 * @param tables other sizes: id and name
 * @param facts names and values
 * @param keepConstant from attempt to attempt
 * @param howToLog what to write down; empty when not stated
 * @param columns of trials.csv that it needs one of
 * @param published how much there is, in words; empty for nothing
 */
record ShotPageView(
        String id,
        String title,
        String kind,
        String diagram,
        String table,
        List<Fact> tables,
        List<Fact> facts,
        List<String> keepConstant,
        String howToLog,
        List<String> columns,
        List<String> published) {

    /** A name and its value. */
    record Fact(String name, String value) {}

    ShotPageView {
        tables = List.copyOf(tables);
        facts = List.copyOf(facts);
        keepConstant = List.copyOf(keepConstant);
        columns = List.copyOf(columns);
        published = List.copyOf(published);
    }

    static ShotPageView of(String id, Optional<Shot> known, PublishedTable size, List<ShotCounts.ShotCount> counts) {
        return new ShotPageView(
                id,
                known.flatMap(Shot::title).orElse(""),
                known.map(shot -> shot.kind().schemaName()).orElse(""),
                known.map(shot -> new ShotDiagram(size.size(), size.pockets()).svg(shot, List.of()))
                        .orElse(""),
                size.name(),
                PublishedTables.all().stream()
                        .map(table -> new Fact(table.id(), table.name()))
                        .toList(),
                known.map(ShotPageView::facts).orElse(List.of()),
                known.map(Shot::keepConstant).orElse(List.of()),
                known.flatMap(Shot::howToLog).orElse(""),
                known.map(shot -> KindOutcomes.of(shot.kind()).needsOneOf().stream()
                                .map(Column::header)
                                .toList())
                        .orElse(List.of()),
                counts.stream().map(ShotGroupView::published).toList());
    }

    private static List<Fact> facts(Shot shot) {
        return List.of(
                new Fact("Delivered by", shot.delivery().orElse(Words.NOTHING)),
                new Fact("Angle of approach", angle(shot)),
                new Fact("Speed of approach", speed(shot)),
                new Fact("Rails in order", rails(shot)));
    }

    private static String angle(Shot shot) {
        return shot.approachAngleDeg().isPresent()
                ? Words.number(shot.approachAngleDeg().getAsDouble(), 1) + "° from straight on"
                : Words.NOTHING;
    }

    private static String speed(Shot shot) {
        return shot.approachSpeedMps().isPresent()
                ? Words.number(shot.approachSpeedMps().getAsDouble(), 2) + " m/s"
                : Words.NOTHING;
    }

    private static String rails(Shot shot) {
        return shot.rails().isEmpty()
                ? Words.NOTHING
                : String.join(
                        ", ",
                        shot.rails().stream().map(rail -> rail.schemaName()).toList());
    }
}
