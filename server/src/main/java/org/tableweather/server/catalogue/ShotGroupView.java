package org.tableweather.server.catalogue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.shots.ShotCatalogue;
import org.tableweather.schema.table.KindOutcomes;
import org.tableweather.server.web.Words;

/**
 * The shots of one kind as a page shows them.
 *
 * @param kind what they test
 * @param meaning of the kind, in words
 * @param shots the catalogue's, then those that contributors added
 */
record ShotGroupView(String kind, String meaning, List<ShotLine> shots) {

    ShotGroupView {
        shots = List.copyOf(shots);
    }

    /**
     * One shot.
     *
     * @param id as trials cite it
     * @param title in words
     * @param published how much there is, in words; empty for nothing
     */
    record ShotLine(String id, String title, String published) {}

    static List<ShotGroupView> all(List<ShotCounts.ShotCount> counts) {
        Map<Kind, List<ShotLine>> lines = new LinkedHashMap<>();
        for (Kind kind : Kind.values()) {
            lines.put(kind, new ArrayList<>());
        }
        for (Shot shot : ShotCatalogue.all()) {
            lines.get(shot.kind()).add(new ShotLine(shot.id(), shot.title().orElse(""), published(shot, counts)));
        }
        for (ShotCounts.ShotCount count : counts) {
            if (ShotCatalogue.byId(count.shot()).isEmpty()) {
                lines.get(Kind.of(count.kind()).orElseThrow())
                        .add(new ShotLine(count.shot(), "added by a contributor", published(count)));
            }
        }
        return lines.entrySet().stream()
                .filter(entry -> !entry.getValue().isEmpty())
                .map(entry -> new ShotGroupView(
                        entry.getKey().schemaName(),
                        KindOutcomes.of(entry.getKey()).description(),
                        entry.getValue()))
                .toList();
    }

    private static String published(Shot shot, List<ShotCounts.ShotCount> counts) {
        Optional<ShotCounts.ShotCount> found =
                counts.stream().filter(count -> count.shot().equals(shot.id())).findFirst();
        return found.map(ShotGroupView::published).orElse("");
    }

    /** How much there is of a shot, in words. */
    static String published(ShotCounts.ShotCount count) {
        return Words.counted(count.trials(), "attempt") + " in " + Words.counted(count.sessions(), "session") + " of "
                + Words.counted(count.rooms(), "room");
    }
}
