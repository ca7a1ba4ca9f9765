package org.tableweather.server.analysis;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import org.tableweather.server.catalogue.ShotCounts;

/** What a form offers for parameters that take any text: shots and rooms that are published. */
@ApplicationScoped
class KnownValues {
    private final ShotCounts shots;
    private final Analyses analyses;

    KnownValues(ShotCounts shots, Analyses analyses) {
        this.shots = shots;
        this.analyses = analyses;
    }

    /** By parameter, for one analyzer. */
    Map<String, List<String>> of(String analyzer) {
        List<String> ids =
                shots.all().stream().map(ShotCounts.ShotCount::shot).distinct().toList();
        List<String> rooms = analyses.summaries(analyzer).sessions().stream()
                .map(session -> session.roomKey())
                .distinct()
                .toList();
        return Map.of("shot", ids, "room", rooms);
    }
}
