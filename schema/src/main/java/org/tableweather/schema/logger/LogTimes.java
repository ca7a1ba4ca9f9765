package org.tableweather.schema.logger;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The ways in which loggers write a time. */
final class LogTimes {
    private static final int FIRST = 20;
    private static final int SAMPLE = 5000;

    private static final List<String> PATTERNS = List.of(
            "uuuu-M-d H:m[:s]",
            "uuuu/M/d H:m[:s]",
            "uuuu.M.d H:m[:s]",
            "d.M.uuuu H:m[:s]",
            "d.M.yy H:m[:s]",
            "d/M/uuuu H:m[:s]",
            "M/d/uuuu H:m[:s]",
            "d/M/yy H:m[:s]",
            "M/d/yy H:m[:s]",
            "d/M/uuuu h:m[:s] a",
            "M/d/uuuu h:m[:s] a",
            "d/M/yy h:m[:s] a",
            "M/d/yy h:m[:s] a",
            "d-M-uuuu H:m[:s]",
            "M-d-uuuu H:m[:s]",
            "d MMM uuuu H:m[:s]",
            "uuuuMMddHHmmss");

    private LogTimes() {}

    /**
     * A time as written.
     *
     * @param instant when an offset was written; null otherwise
     * @param local when none was; null otherwise
     */
    record Stamp(Instant instant, LocalDateTime local) {}

    private static Optional<Stamp> read(DateTimeFormatter formatter, String text) {
        try {
            TemporalAccessor read = formatter.parse(text);
            return Optional.of(
                    read.isSupported(ChronoField.OFFSET_SECONDS)
                            ? new Stamp(Instant.from(read), null)
                            : new Stamp(null, LocalDateTime.from(read)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** One way of writing. */
    interface Format {
        /** In words. */
        String name();

        /** Reads a text. */
        Optional<Stamp> read(String text);
    }

    private record Pattern(String name, DateTimeFormatter formatter) implements Format {
        @Override
        public Optional<Stamp> read(String text) {
            return LogTimes.read(formatter, text);
        }
    }

    /** ISO 8601, with or without an offset, with T or a blank. */
    private record Iso() implements Format {
        @Override
        public String name() {
            return "ISO 8601";
        }

        @Override
        public Optional<Stamp> read(String text) {
            if (text.length() < 16 || text.charAt(4) != '-') {
                return Optional.empty();
            }
            String day = text.substring(0, 10);
            String iso = (text.charAt(10) == ' ' ? day + 'T' + text.substring(11) : text).replace(" ", "");
            return LogTimes.read(DateTimeFormatter.ISO_DATE_TIME, iso);
        }
    }

    /** Seconds or milliseconds since 1970. */
    private record Epoch(String name, long perSecond) implements Format {
        @Override
        public Optional<Stamp> read(String text) {
            boolean whole = text.matches(perSecond == 1 ? "\\d{9,10}" : "\\d{12,13}");
            return whole
                    ? Optional.of(new Stamp(Instant.ofEpochMilli(Long.parseLong(text) * (1000 / perSecond)), null))
                    : Optional.empty();
        }
    }

    /**
     * The way in which all times, or most, are written.
     *
     * @param texts all times
     * @param options may name a pattern
     * @param guesses takes what was guessed
     * @throws LogNotUnderstood when none fits, or two fit equally well
     */
    static Format find(List<String> texts, LogOptions options, List<String> guesses) throws LogNotUnderstood {
        if (options.timePattern().isPresent()) {
            return named(options.timePattern().get());
        }
        List<Format> best = new ArrayList<>();
        long most = 0;
        for (Format format : candidates()) {
            if (texts.stream().limit(FIRST).noneMatch(text -> format.read(text).isPresent())) {
                continue;
            }
            long read = texts.stream()
                    .limit(SAMPLE)
                    .filter(text -> format.read(text).isPresent())
                    .count();
            if (read > most) {
                best.clear();
                most = read;
            }
            if (read == most && read > 0) {
                best.add(format);
            }
        }
        if (best.isEmpty()) {
            String first = texts.isEmpty() ? "" : texts.get(0);
            throw new LogNotUnderstood("'" + first + "' is no time that is known here: give its timePattern");
        }
        Format taken = best.size() == 1 ? best.get(0) : steadiest(best, texts);
        guesses.add("times are written as " + taken.name());
        return taken;
    }

    private static List<Format> candidates() {
        List<Format> formats = new ArrayList<>();
        formats.add(new Iso());
        PATTERNS.forEach(pattern -> formats.add(new Pattern(pattern, formatter(pattern))));
        formats.add(new Epoch("seconds since 1970", 1));
        formats.add(new Epoch("milliseconds since 1970", 1000));
        return formats;
    }

    private static Format named(String pattern) throws LogNotUnderstood {
        try {
            return new Pattern(pattern, formatter(pattern));
        } catch (IllegalArgumentException e) {
            throw new LogNotUnderstood("timePattern " + pattern + " is no pattern of times: " + e.getMessage());
        }
    }

    private static DateTimeFormatter formatter(String pattern) {
        return new DateTimeFormatterBuilder()
                .parseCaseInsensitive()
                .appendPattern(pattern)
                .toFormatter(Locale.ENGLISH)
                .withResolverStyle(ResolverStyle.SMART);
    }

    /** Of formats that read all, the one in which a logger's clock runs evenly: day and month not swapped. */
    private static Format steadiest(List<Format> formats, List<String> texts) throws LogNotUnderstood {
        Format best = formats.get(0);
        long shortest = wandering(best, texts);
        boolean tie = false;
        for (Format format : formats.subList(1, formats.size())) {
            if (agree(best, format, texts)) {
                continue;
            }
            long wandering = wandering(format, texts);
            tie = wandering == shortest || tie && wandering > shortest;
            if (wandering < shortest) {
                shortest = wandering;
                best = format;
            }
        }
        if (tie) {
            throw new LogNotUnderstood("'" + texts.get(0) + "' can be read in more than one way ("
                    + String.join(", ", formats.stream().map(Format::name).toList()) + "): give the timePattern");
        }
        return best;
    }

    private static boolean agree(Format one, Format other, List<String> texts) {
        return texts.stream().limit(SAMPLE).allMatch(text -> one.read(text).equals(other.read(text)));
    }

    /** The way that the clock's hand goes, forth and back, s. */
    private static long wandering(Format format, List<String> texts) {
        long sum = 0;
        LocalDateTime previous = null;
        for (String text : texts.subList(0, Math.min(SAMPLE, texts.size()))) {
            LocalDateTime time = format.read(text).map(Stamp::local).orElse(null);
            if (time != null && previous != null) {
                sum += Math.abs(Duration.between(previous, time).getSeconds());
            }
            previous = time == null ? previous : time;
        }
        return sum;
    }
}
