package org.tableweather.analyzers.standard.catalogue.path;

import java.util.List;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;
import org.tableweather.analyzers.standard.catalogue.rail.RailLeague;

class PathPredictionContractTest extends AnalyzerContract<PathSummary> {

    @Override
    protected Analyzer<PathSummary> analyzer() {
        return new PathPrediction();
    }

    @Override
    protected List<Example> examples() {
        return new RailLeague()
                .drawn(6, 4, 3, 6).stream()
                        .map(held -> new Example(held.session(), held.trials()))
                        .toList();
    }
}
