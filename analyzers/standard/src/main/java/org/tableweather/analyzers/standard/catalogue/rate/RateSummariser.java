package org.tableweather.analyzers.standard.catalogue.rate;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Cell;
import org.tableweather.analyzers.standard.catalogue.rate.RateSummary.Part;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Counts one shot's attempts of a session by climate. */
final class RateSummariser {

    /** Name of the outcome in the protocol. */
    static final String OUTCOME = "made";

    private final SortedMap<Integer, SortedMap<Integer, long[]>> cells = new TreeMap<>();
    private long withoutClimate;
    private long notStated;

    /** The summary of trials in any order. */
    static RateSummary of(SessionRecord session, Iterable<Trial> trials) {
        List<Trial> ordered = CorrectedClimate.of(session).ordered(trials);
        SortedMap<String, RateSummariser> shots = new TreeMap<>();
        ordered.forEach(trial -> shots.computeIfAbsent(trial.shot(), shot -> new RateSummariser())
                .add(trial));
        List<Part> parts = new ArrayList<>();
        shots.forEach((shot, counts) -> parts.add(counts.part(shot)));
        return new RateSummary(
                parts,
                new SessionProtocolBuilder(Map.of(OUTCOME, RateSummariser::made))
                        .ofOrdered(session.session(), ordered));
    }

    private static double made(Trial trial) {
        if (trial.made() == Made.NOT_STATED) {
            return Double.NaN;
        }
        return trial.made() == Made.YES ? 1 : 0;
    }

    private void add(Trial trial) {
        Climate climate = trial.climate();
        if (trial.made() == Made.NOT_STATED) {
            notStated++;
        } else if (!climate.isKnown()) {
            withoutClimate++;
        } else {
            long[] cell = cells.computeIfAbsent(tenths(climate.rhPct()), rh -> new TreeMap<>())
                    .computeIfAbsent(tenths(climate.tempC()), temp -> new long[2]);
            cell[0] += trial.made() == Made.YES ? 1 : 0;
            cell[1]++;
        }
    }

    private static int tenths(double number) {
        return (int) Math.round(10 * number);
    }

    private Part part(String shot) {
        List<Cell> list = new ArrayList<>();
        cells.forEach((rh, temps) -> temps.forEach((temp, cell) -> list.add(new Cell(rh, temp, cell[0], cell[1]))));
        return new Part(shot, list, withoutClimate, notStated);
    }
}
