package org.tableweather.schema.folder;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.RecordType;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.tableweather.schema.record.BallSet;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.Contribution;
import org.tableweather.schema.record.Contributor;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.PoolTable;
import org.tableweather.schema.record.Room;
import org.tableweather.schema.record.Session;
import org.tableweather.schema.record.Trial;

/**
 * How fast a large folder is written and read: {@code ReadBench FOLDER [trials] [rounds]}. Prints processor
 * seconds of the one thread that does the work, beside those of the CSV library alone over the same file: cells only, and
 * with its records of texts.
 */
public final class ReadBench {
    private static final int SESSIONS_PER_ROOM = 10;

    private ReadBench() {}

    /** Runs. */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[0]);
        int trials = args.length > 1 ? Integer.parseInt(args[1]) : 1_000_000;
        int rounds = args.length > 2 ? Integer.parseInt(args[2]) : 6;
        PrintStream out = System.out;
        if (!Files.exists(folder.resolve("contribution.json"))) {
            long start = now();
            write(folder, trials, Math.max(1, trials / 1000));
            out.printf(Locale.ROOT, "write      %8.0f rows/s%n", trials / seconds(start));
        }
        for (int round = 0; round < rounds; round++) {
            long start = now();
            long cells = readWithLibraryAlone(folder.resolve("trials.csv"));
            double alone = seconds(start);
            start = now();
            readWithLibrarysRecords(folder.resolve("trials.csv"));
            double records = seconds(start);
            start = now();
            long handed = read(folder);
            double whole = seconds(start);
            out.printf(
                    Locale.ROOT,
                    "library alone %.3f s, with its records %.3f s (%d cells); read, check and hand over %.3f s, %.0f rows/s%n",
                    alone,
                    records,
                    cells,
                    whole,
                    handed / whole);
        }
    }

    /** Processor time of this thread, which other work on the machine does not lengthen. */
    private static long now() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static double seconds(long start) {
        return (now() - start) / 1e9;
    }

    private static long readWithLibrarysRecords(Path csv) throws IOException {
        long cells = 0;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(csv)) {
            for (CsvRecord row : reader) {
                cells += row.getFieldCount();
            }
        }
        return cells;
    }

    private static long read(Path folder) throws IOException {
        long[] handed = new long[2];
        try (ContributionSource source = ContributionSource.of(folder, ArchiveLimits.defaults())) {
            ContributionReader.Result result = ContributionReader.create()
                    .read(
                            source,
                            ContributionReader.ContributionListener.NONE,
                            (session, run) -> handed[0] += run.size(),
                            (session, trials) -> handed[1] += trials.size());
            if (result.report().isRefused()) {
                throw new IllegalStateException(result.report().toString());
            }
        }
        return handed[0];
    }

    private static long readWithLibraryAlone(Path csv) throws IOException {
        long[] cells = new long[1];
        AbstractBaseCsvCallbackHandler<Boolean> counting = new AbstractBaseCsvCallbackHandler<>() {
            @Override
            protected void handleField(int column, char[] buffer, int offset, int length, boolean quoted) {
                cells[0]++;
            }

            @Override
            protected Boolean buildRecord() {
                return Boolean.TRUE;
            }

            @Override
            protected RecordType getRecordType() {
                return RecordType.DATA;
            }
        };
        try (CsvReader<Boolean> reader = CsvReader.builder().build(counting, csv)) {
            for (Boolean each : reader) {
                assert each;
            }
        }
        return cells[0];
    }

    private static void write(Path folder, int trials, int sessions) throws IOException {
        Random random = new Random(1);
        try (ContributionWriter writer = ContributionWriter.into(folder, contribution(sessions))) {
            for (int i = 0; i < trials; i++) {
                int session = (int) ((long) i * sessions / trials);
                writer.write(trial(session, i, random));
            }
        }
    }

    private static Contribution contribution(int sessions) {
        List<Room> rooms = new ArrayList<>();
        List<PoolTable> tables = new ArrayList<>();
        List<Session> entries = new ArrayList<>();
        for (int i = 0; i < sessions; i++) {
            int room = i / SESSIONS_PER_ROOM;
            if (i % SESSIONS_PER_ROOM == 0) {
                rooms.add(room("r" + room));
                tables.add(table("t" + room, "r" + room));
            }
            entries.add(session("s" + i, "t" + room));
        }
        Contributor contributor = new Contributor("Bench", Optional.empty(), Optional.empty());
        List<BallSet> balls = List.of();
        return new Contribution(
                "1.0",
                Optional.empty(),
                "CC0-1.0",
                Optional.of(true),
                contributor,
                rooms,
                tables,
                balls,
                List.of(),
                List.of(),
                List.of(),
                entries);
    }

    private static Room room(String id) {
        OptionalDouble none = OptionalDouble.empty();
        return new Room(id, Optional.empty(), Optional.empty(), none, none, none, List.of());
    }

    private static PoolTable table(String id, String room) {
        OptionalDouble none = OptionalDouble.empty();
        return new PoolTable(id, room, none, none, Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static Session session(String id, String table) {
        OptionalDouble none = OptionalDouble.empty();
        return new Session(
                id,
                table,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(true),
                Optional.of(true),
                Optional.empty(),
                OptionalInt.empty(),
                none,
                none,
                none,
                none,
                none,
                Optional.empty());
    }

    private static double places(double value, double factor) {
        return Math.round(value * factor) / factor;
    }

    private static Trial trial(int session, int number, Random random) {
        double rh = 30 + session % 5 * 10;
        double angle = places(45 - 0.08 * (rh - 50) + random.nextGaussian(), 100);
        return new Trial(
                "s" + session,
                Integer.toString(number),
                Optional.of(Instant.ofEpochSecond(1_768_240_800L + session * 86_400L + number % 1000 * 40L)),
                Kind.REBOUND,
                number % 3 == 0 ? "rebound-30-ramp" : "rebound-45-ramp",
                "",
                places(21 + random.nextGaussian() * 0.2, 100),
                places(rh + random.nextGaussian(), 10),
                places(45 + random.nextGaussian() * 0.3, 100),
                places(2 + random.nextGaussian() * 0.1, 1000),
                places(random.nextGaussian() * 0.2, 1000),
                places(1 + random.nextGaussian() * 0.02, 1000),
                places(random.nextGaussian(), 10),
                angle,
                places(1.4 + random.nextGaussian() * 0.05, 1000),
                angle,
                places(random.nextGaussian() * 0.1, 1000),
                number % 7 == 0 ? Made.NO : Made.YES,
                1,
                places(3 + random.nextGaussian() * 0.1, 1000),
                places(1.2 + random.nextGaussian() * 0.04, 1000),
                Double.NaN,
                Double.NaN,
                Double.NaN,
                -1,
                Double.NaN,
                Double.NaN,
                "",
                Climate.NONE);
    }
}
