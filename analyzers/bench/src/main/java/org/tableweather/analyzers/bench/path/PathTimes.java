package org.tableweather.analyzers.bench.path;

import java.util.Collection;
import java.util.Locale;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Times {@link PathBench} in processes of their own, on one thread, and prints each mean with its error. */
public final class PathTimes {

    private static final int FORKS = 3;
    private static final int WARMUPS = 3;
    private static final int MEASUREMENTS = 5;

    private PathTimes() {}

    /**
     * Runs.
     *
     * @param arguments none
     * @throws RunnerException when JMH cannot run
     */
    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(PathBench.class.getName())
                        .threads(1)
                        .forks(FORKS)
                        .warmupIterations(WARMUPS)
                        .warmupTime(TimeValue.seconds(1))
                        .measurementIterations(MEASUREMENTS)
                        .measurementTime(TimeValue.seconds(1))
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();
        for (RunResult each : results) {
            Result<?> time = each.getPrimaryResult();
            System.out.printf(
                    Locale.ROOT,
                    "%s: %.2f ± %.2f µs a path (99.9 %%, %d measurements in %d processes)%n",
                    time.getLabel(),
                    time.getScore(),
                    time.getScoreError(),
                    time.getStatistics().getN(),
                    FORKS);
        }
    }
}
