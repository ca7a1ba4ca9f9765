package org.tableweather.analyzers.bench;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is to be measured, and how large.
 *
 * @param parts which benchmarks
 * @param withR whether R runs as a peer
 * @param trialsPerSession of the pool of 100 rooms with 10 sessions each
 * @param repeats of each pair of contributions
 * @param warmFits how often a fit is repeated for its median
 * @param growthSessions numbers of sessions whose fits are compared
 * @param largeTrials trials of the pool that must fit into little memory, and of the release that is scanned
 * @param exportTrials trials of the server that is asked for all of them, and for curves
 * @param servedSeconds how long each kind of question is asked
 * @param keep whether a server that an earlier run filled is used again
 * @param release where the release that is scanned is kept for another run; empty to make one that is not kept
 */
record BenchOptions(
        Set<Part> parts,
        boolean withR,
        int trialsPerSession,
        int repeats,
        int warmFits,
        List<Integer> growthSessions,
        int largeTrials,
        int exportTrials,
        int servedSeconds,
        boolean keep,
        Optional<Path> release) {

    /** One benchmark. */
    enum Part {
        CONTRIBUTE,
        ANSWER,
        PEERS,
        GROWTH,
        ADDED,
        LARGE,
        RELEASE,
        EXPORT,
        SCAN,
        SERVED;

        private static Part named(String name) {
            return Arrays.stream(values())
                    .filter(part -> part.name().equals(name.toUpperCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException(
                            "--parts " + name + " is not known: choose of " + allNamed() + ", separated by commas"));
        }

        private static String allNamed() {
            return Arrays.stream(values())
                    .map(part -> part.name().toLowerCase(Locale.ROOT))
                    .collect(Collectors.joining(", "));
        }
    }

    /** Everything, at full size. */
    static BenchOptions standard() {
        return new Draft().options();
    }

    /**
     * Reads the command line.
     *
     * @throws IllegalArgumentException for an option or a value that cannot be; the message holds the remedy
     */
    static BenchOptions of(List<String> arguments) {
        Draft draft = new Draft();
        Deque<String> left = new ArrayDeque<>(arguments);
        while (!left.isEmpty()) {
            draft.take(left.pop(), left);
        }
        return draft.options();
    }

    /** The options while they are read. */
    private static final class Draft {
        private Set<Part> parts = EnumSet.allOf(Part.class);
        private boolean withR = true;
        private int trialsPerSession = 1000;
        private int repeats = 5;
        private int warmFits = 60;
        private List<Integer> growthSessions = List.of(1_000, 10_000, 100_000);
        private int largeTrials = 10_000_000;
        private int exportTrials = 10_000_000;
        private int servedSeconds = 30;
        private boolean keep;
        private Optional<Path> release = Optional.empty();

        private void take(String name, Deque<String> left) {
            switch (name) {
                case "--skip-r" -> withR = false;
                case "--keep" -> keep = true;
                case "--parts" -> parts = named(value(name, left));
                case "--trials-per-session" -> trialsPerSession = count(name, left, 2);
                case "--repeats" -> repeats = count(name, left, 1);
                case "--warm-fits" -> warmFits = count(name, left, 2);
                case "--growth-sessions" -> growthSessions = sizes(name, left);
                case "--large-trials" -> largeTrials = count(name, left, 10_000);
                case "--export-trials" -> exportTrials = count(name, left, 10_000);
                case "--served-seconds" -> servedSeconds = count(name, left, 2);
                case "--release" -> release = Optional.of(Path.of(value(name, left)));
                default ->
                    throw new IllegalArgumentException(
                            "there is no option " + name + ": analyzers/bench/README.md" + " lists them");
            }
        }

        private BenchOptions options() {
            return new BenchOptions(
                    parts,
                    withR,
                    trialsPerSession,
                    repeats,
                    warmFits,
                    growthSessions,
                    largeTrials,
                    exportTrials,
                    servedSeconds,
                    keep,
                    release);
        }
    }

    private static Set<Part> named(String names) {
        return EnumSet.copyOf(Arrays.stream(names.split(",")).map(Part::named).toList());
    }

    private static List<Integer> sizes(String name, Deque<String> left) {
        return Arrays.stream(value(name, left).split(","))
                .map(size -> number(name, size, 100))
                .toList();
    }

    private static int count(String name, Deque<String> left, int least) {
        return number(name, value(name, left), least);
    }

    private static int number(String name, String value, int least) {
        if (!value.matches("[0-9]{1,9}") || Integer.parseInt(value) < least) {
            throw new IllegalArgumentException(
                    name + " " + value + " is not a whole number from " + least + " to 999999999: choose one");
        }
        return Integer.parseInt(value);
    }

    private static String value(String name, Deque<String> left) {
        if (left.isEmpty()) {
            throw new IllegalArgumentException(name + " needs a value: write it behind");
        }
        return left.pop();
    }
}
