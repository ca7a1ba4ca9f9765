package org.tableweather.analyzers.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.tableweather.analyzers.host.AnalysisRun;
import org.tableweather.analyzers.host.AnalyzerCatalogue;
import org.tableweather.analyzers.host.LocalSummaries;
import org.tableweather.analyzers.spi.Analyzer;

/** A folder read, checked, summarised and concluded over, as the command does it, in a program of its own: its memory is told. */
public final class FolderAnswer {

    private FolderAnswer() {}

    /**
     * Prints what went into the answer, and whether there is one.
     *
     * @param arguments the folder
     */
    public static void main(String[] arguments) throws IOException {
        AnalysisRun run =
                run(AnalyzerCatalogue.discover().find("rebound-humidity").orElseThrow(), Path.of(arguments[0]));
        System.out.println(run.dataset().inWords() + "; "
                + run.analysis().fold(estimated -> "estimated", declined -> "declined: " + declined.detail()));
    }

    private static <S> AnalysisRun run(Analyzer<S> analyzer, Path folder) throws IOException {
        return AnalysisRun.conclude(
                analyzer,
                LocalSummaries.read(analyzer, List.of(folder), bytes -> {}).source(),
                Map.of());
    }
}
