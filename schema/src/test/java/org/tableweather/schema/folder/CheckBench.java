package org.tableweather.schema.folder;

import com.sun.management.OperatingSystemMXBean;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * What all checks cost beside reading the same CSV file with the CSV library alone: {@code CheckBench FOLDER [rounds]}, after
 * {@code ReadBench FOLDER} has written it. Turn by turn in one run; the median of the rounds after the first two. Elapsed
 * time, and the processor time of the whole process, all threads: a contribution is read by two.
 */
public final class CheckBench {
    private static final int WARM_UP = 2;

    private CheckBench() {}

    /** Runs. */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[0]);
        int rounds = WARM_UP + (args.length > 1 ? Integer.parseInt(args[1]) : 9);
        Turn[] library = new Turn[rounds];
        Turn[] check = new Turn[rounds];
        for (int round = 0; round < rounds; round++) {
            library[round] = Turn.of(() -> characters(folder.resolve("trials.csv")));
            check[round] = Turn.of(() -> check(folder));
        }
        System.out.printf(Locale.ROOT, "%d trials%n", check[0].result());
        print("elapsed", library, check, Turn::elapsedS);
        print("processor", library, check, Turn::processorS);
    }

    private static void print(String what, Turn[] library, Turn[] check, ToDoubleFunction<Turn> time) {
        double alone = median(library, time);
        double checked = median(check, time);
        System.out.printf(
                Locale.ROOT,
                "%-9s library alone %.3f s, with all checks %.3f s: %.2f times%n",
                what,
                alone,
                checked,
                checked / alone);
    }

    /** One reading and what it took. */
    private record Turn(long result, double elapsedS, double processorS) {

        /** What is timed. */
        private interface Reading {
            long read() throws IOException;
        }

        static Turn of(Reading reading) throws IOException {
            OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
            long processor = system.getProcessCpuTime();
            long start = System.nanoTime();
            long result = reading.read();
            return new Turn(result, (System.nanoTime() - start) / 1e9, (system.getProcessCpuTime() - processor) / 1e9);
        }
    }

    private static double median(Turn[] rounds, ToDoubleFunction<Turn> time) {
        double[] kept =
                Arrays.stream(rounds).skip(WARM_UP).mapToDouble(time).sorted().toArray();
        return kept[kept.length / 2];
    }

    /** Every cell as the library hands it out: a text. */
    private static long characters(Path csv) throws IOException {
        long characters = 0;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv)) {
            for (CsvRecord row : reader) {
                for (int i = 0; i < row.getFieldCount(); i++) {
                    characters += row.getField(i).length();
                }
            }
        }
        return characters;
    }

    private static long check(Path folder) throws IOException {
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.Result result = ContributionReader.create()
                    .read(source, ContributionReader.ContributionListener.NONE, TrialSink.NONE, SessionSink.NONE);
            if (result.report().isRefused()) {
                throw new IllegalStateException(result.report().toString());
            }
            return result.report().trials();
        }
    }
}
