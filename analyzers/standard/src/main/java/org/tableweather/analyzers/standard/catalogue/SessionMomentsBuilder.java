package org.tableweather.analyzers.standard.catalogue;

import java.util.SortedMap;
import java.util.TreeMap;
import org.tableweather.analyzers.spi.TrialColumns;
import org.tableweather.analyzers.standard.catalogue.guard.SessionProtocolBuilder;
import org.tableweather.analyzers.standard.climate.CorrectedClimate;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/** Gathers a session's trials by shot and pattern. */
public final class SessionMomentsBuilder {

    private static final Measure[] MEASURES = Measure.values();

    private SessionMomentsBuilder() {}

    /** The summary of a session, its climates corrected by its instrument's calibration: equal trials give equal bits. */
    public static SessionMoments of(SessionRecord session, TrialColumns read) {
        CorrectedClimate climate = CorrectedClimate.of(session);
        TrialColumns trials = climate.of(read);
        double[][] columns = columns(trials);
        return new SessionMoments(
                new ColumnParts(trials, columns).parts(),
                SessionTraits.of(session, climate),
                SessionProtocolBuilder.of(session.session(), trials, responses(columns)));
    }

    /** The same of trials that are there as rows, in any order. */
    public static SessionMoments of(SessionRecord session, Iterable<Trial> rows) {
        return of(session, TrialColumns.of(rows, Measure.NUMBERS));
    }

    /** The same of trials of which nothing else is known, in any order. */
    public static SessionMoments of(Iterable<Trial> rows) {
        TrialColumns trials = TrialColumns.of(rows, Measure.NUMBERS);
        double[][] columns = columns(trials);
        return new SessionMoments(
                new ColumnParts(trials, columns).parts(),
                SessionTraits.UNKNOWN,
                SessionProtocolBuilder.of(trials, responses(columns)));
    }

    private static double[][] columns(TrialColumns trials) {
        double[][] columns = new double[MEASURES.length][];
        for (int i = 0; i < columns.length; i++) {
            columns[i] = MEASURES[i].of(trials);
        }
        return columns;
    }

    private static SortedMap<String, double[]> responses(double[][] columns) {
        SortedMap<String, double[]> responses = new TreeMap<>();
        for (Response response : Response.values()) {
            responses.put(response.parameter, columns[response.measure.ordinal()]);
        }
        return responses;
    }
}
