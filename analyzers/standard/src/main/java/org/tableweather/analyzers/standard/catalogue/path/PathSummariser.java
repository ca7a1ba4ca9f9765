package org.tableweather.analyzers.standard.catalogue.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.standard.catalogue.SessionMomentsBuilder;
import org.tableweather.analyzers.standard.catalogue.path.PathSummary.Landings;
import org.tableweather.analyzers.standard.catalogue.rail.RailModel;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.analyzers.standard.physics.Ball;
import org.tableweather.schema.geometry.TableSize;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's pairs and landings. */
final class PathSummariser {

    private static final double FARTHEST_DIA = 16;

    private PathSummariser() {}

    /** The summary of trials in any order: equal trials give equal bits. */
    static PathSummary of(SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = new ArrayList<>();
        trials.forEach(ordered::add);
        ordered.sort(Trial.CANONICAL_ORDER);
        List<Trial> corrected = new ArrayList<>();
        CorrectedClimate.of(session).of(ordered).forEach(corrected::add);
        Optional<TableSize> size = TableSize.stated(session.table(), session.ballSet(), Ball.POOL.diameterM());
        return new PathSummary(
                new RailModel().summarise(session, ordered),
                SessionMomentsBuilder.of(session, ordered),
                Rolling.of(session, corrected),
                landings(corrected),
                size.map(TableSize::playingLengthM).orElse(Double.NaN),
                size.map(TableSize::playingWidthM).orElse(Double.NaN),
                size.map(TableSize::ballDiameterM).orElse(Double.NaN));
    }

    private static List<Landings> landings(Iterable<Trial> ordered) {
        SortedMap<String, List<Trial>> byShot = new TreeMap<>();
        for (Trial trial : ordered) {
            double rhPct = trial.climate().rhPct();
            boolean climate =
                    rhPct >= 0 && rhPct <= 100 && Math.abs(trial.climate().tempC()) <= 100;
            if (climate && Math.abs(trial.landingOffsetDia()) <= FARTHEST_DIA) {
                byShot.computeIfAbsent(trial.shot(), shot -> new ArrayList<>()).add(trial);
            }
        }
        List<Landings> landings = new ArrayList<>();
        byShot.forEach((shot, landed) -> landings.add(new Landings(
                shot,
                landed.stream().mapToDouble(each -> each.climate().rhPct()).sum() / landed.size(),
                landed.stream().mapToDouble(each -> each.climate().tempC()).sum() / landed.size(),
                landed.stream().map(Trial::landingOffsetDia).toList())));
        return landings;
    }
}
