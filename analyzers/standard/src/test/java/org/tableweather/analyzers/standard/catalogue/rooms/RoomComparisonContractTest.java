package org.tableweather.analyzers.standard.catalogue.rooms;

import java.util.List;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;

class RoomComparisonContractTest extends AnalyzerContract<SessionMoments> {

    @Override
    protected Analyzer<SessionMoments> analyzer() {
        return new RoomComparison();
    }

    @Override
    protected List<Example> examples() {
        return RoomLeague.examples(RoomLeague.drawn(7, 4, 12, 0.3, 6));
    }
}
