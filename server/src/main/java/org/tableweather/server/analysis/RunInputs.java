package org.tableweather.server.analysis;

import java.util.List;
import java.util.SortedMap;
import org.tableweather.analyzers.host.RunId;
import org.tableweather.analyzers.host.Summaries;
import org.tableweather.analyzers.spi.AnalyzerInfo;
import org.tableweather.analyzers.spi.Parameters;

/**
 * All that an analysis is made from; it names the run.
 *
 * @param id of the run
 * @param analyzer id
 * @param version of the analyzer
 * @param parameters complete, by name
 * @param datasetHash names the set of sessions
 * @param digests of these sessions, sorted
 */
record RunInputs(
        String id,
        String analyzer,
        String version,
        SortedMap<String, String> parameters,
        String datasetHash,
        List<String> digests) {

    static RunInputs of(AnalyzerInfo analyzer, Parameters parameters, List<String> digests) {
        List<String> sorted = digests.stream().sorted().toList();
        String hash = Summaries.hash(sorted);
        return new RunInputs(
                RunId.of(analyzer, parameters, hash),
                analyzer.id(),
                analyzer.version(),
                parameters.values(),
                hash,
                sorted);
    }
}
