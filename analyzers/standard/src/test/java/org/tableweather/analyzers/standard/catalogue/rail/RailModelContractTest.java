package org.tableweather.analyzers.standard.catalogue.rail;

import java.util.List;
import org.tableweather.analyzers.spi.Analyzer;
import org.tableweather.analyzers.spi.AnalyzerContract;

class RailModelContractTest extends AnalyzerContract<RailSummary> {

    @Override
    protected Analyzer<RailSummary> analyzer() {
        return new RailModel();
    }

    @Override
    protected List<Example> examples() {
        return new RailLeague()
                .drawn(6, 4, 3, 6).stream()
                        .map(held -> new Example(held.session(), held.trials()))
                        .toList();
    }
}
