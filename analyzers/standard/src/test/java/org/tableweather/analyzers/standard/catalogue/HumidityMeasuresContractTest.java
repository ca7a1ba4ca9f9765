package org.tableweather.analyzers.standard.catalogue;

import java.util.List;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;

class HumidityMeasuresContractTest extends AnalyzerContract<SessionMoments> {

    @Override
    protected Analyzer<SessionMoments> analyzer() {
        return new HumidityMeasures();
    }

    @Override
    protected List<Example> examples() {
        return InventedLeague.drawn(7, 4, 12, 6).stream()
                .map(held -> new Example(InventedLeague.record(held), held.trials()))
                .toList();
    }
}
