package org.tableweather.server.contribution;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.diagram.ShotDiagram;
import org.tableweather.schema.equipment.PublishedTables;
import org.tableweather.schema.folder.SessionTraces;
import org.tableweather.schema.geometry.PocketMouths;
import org.tableweather.schema.geometry.TablePoint;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Shot;
import org.tableweather.schema.record.Trial;
import org.tableweather.schema.shots.ShotCatalogue;
import org.tableweather.server.web.Words;

/**
 * The table of a session with the marked paths of one shot.
 *
 * @param shot its id
 * @param svg the drawing; empty when nothing is known of the shot
 * @param words what is drawn
 */
record SessionDrawing(String shot, String svg, String words) {
    /** Most drawings of a page. */
    private static final int MOST_SHOTS = 8;
    /** Most paths in a drawing: more cannot be told apart. */
    private static final int MOST_PATHS = 200;

    private static final double USUAL_LENGTH_MM = 2540;

    /** One for each of the first shots of a session, in the order in which they were shot. */
    static List<SessionDrawing> all(SessionDossier dossier) {
        Map<String, List<List<TablePoint>>> shots = new LinkedHashMap<>();
        Map<String, List<TablePoint>> paths =
                dossier.traces().map(SessionTraces::paths).orElse(Map.of());
        for (Trial trial : dossier.whole().trials()) {
            List<List<TablePoint>> ofShot = shots.computeIfAbsent(trial.shot(), shot -> new ArrayList<>());
            Optional.ofNullable(paths.get(trial.trial())).ifPresent(ofShot::add);
        }
        List<SessionDrawing> drawings = new ArrayList<>();
        for (Map.Entry<String, List<List<TablePoint>>> shot : shots.entrySet()) {
            if (drawings.size() < MOST_SHOTS) {
                drawings.add(of(dossier, shot.getKey(), shot.getValue(), "table-" + drawings.size()));
            }
        }
        return drawings;
    }

    private static SessionDrawing of(SessionDossier dossier, String id, List<List<TablePoint>> paths, String prefix) {
        Optional<Shot> shot = dossier.traces().map(SessionTraces::shots).orElse(List.of()).stream()
                .filter(own -> own.id().equals(id))
                .findFirst()
                .or(() -> ShotCatalogue.byId(id));
        if (shot.isEmpty()) {
            return new SessionDrawing(id, "", "Its definition is not in the catalogue, so it cannot be drawn.");
        }
        SessionRecord entry = dossier.whole().entry();
        double lengthMm = entry.table().playingLengthMm().orElse(USUAL_LENGTH_MM);
        PocketMouths pockets = PublishedTables.nearest(lengthMm).pockets();
        Optional<TableSize> stated = PublishedTables.sizeOf(entry.table(), entry.ballSet());
        TableSize size = stated.orElse(PublishedTables.nearest(lengthMm).size());
        String svg = new ShotDiagram(size, pockets)
                .svg(shot.get(), paths.stream().limit(MOST_PATHS).toList(), prefix);
        return new SessionDrawing(id, svg, words(paths.size(), stated.isPresent()));
    }

    private static String words(int paths, boolean sized) {
        String table = sized ? "" : " The size of the table is not stated: drawn on one of 9 ft.";
        if (paths == 0) {
            return "No path was marked: the bold line is the shot as it is meant, off perfect rails." + table;
        }
        String drawn = paths > MOST_PATHS
                ? "The first " + MOST_PATHS + " of " + Words.counted(paths, "marked path")
                : Words.counted(paths, "marked path");
        return drawn + ", thin; the bold line is the shot as it is meant, off perfect rails." + table;
    }
}
