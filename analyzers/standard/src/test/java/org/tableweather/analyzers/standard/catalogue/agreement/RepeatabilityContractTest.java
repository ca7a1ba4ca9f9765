package org.tableweather.analyzers.standard.catalogue.agreement;

import java.util.List;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.analyzers.standard.catalogue.SessionMoments;
import org.tableweather.analyzers.standard.catalogue.rooms.RoomLeague;

class RepeatabilityContractTest extends AnalyzerContract<SessionMoments> {

    @Override
    protected Analyzer<SessionMoments> analyzer() {
        return new Repeatability();
    }

    @Override
    protected List<Example> examples() {
        return RoomLeague.examples(RoomLeague.drawn(7, 4, 12, 0.3, 6));
    }
}
