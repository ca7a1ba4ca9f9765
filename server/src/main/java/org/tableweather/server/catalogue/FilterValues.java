package org.tableweather.server.catalogue;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.tableweather.schema.check.Severity;
import org.tableweather.schema.record.Kind;
import org.tableweather.server.web.ErrorCode;
import org.tableweather.server.web.NearestName;
import org.tableweather.server.web.Refusal;

/** Reads the values of filters; each refusal names the parameter, the value and what it may be. */
final class FilterValues {
    private static final String NO_FINDING = "none";
    private static final int LAST_YEAR = 9999;

    private FilterValues() {}

    static Optional<Kind> kind(String text) {
        if (text == null) {
            return Optional.empty();
        }
        Optional<Kind> kind = Kind.of(text);
        if (kind.isEmpty()) {
            throw notOneOf(
                    "kind",
                    text,
                    Arrays.stream(Kind.values()).map(Kind::schemaName).toList());
        }
        return kind;
    }

    /** A country's code; asked in small letters it is meant all the same. */
    static Optional<String> country(String text) {
        if (text == null) {
            return Optional.empty();
        }
        if (!text.matches("[A-Za-z]{2}")) {
            throw bad("country", text, "is no code of two letters (ISO 3166-1): write NO for Norway");
        }
        return Optional.of(text.toUpperCase(Locale.ROOT));
    }

    /** Rank of a severity: 0 for none, 1 for a note, 2 for a warning. */
    static OptionalInt severity(String name, String text) {
        if (text == null) {
            return OptionalInt.empty();
        }
        List<String> ranks = List.of(NO_FINDING, Severity.NOTE.schemaName(), Severity.WARN.schemaName());
        if (!ranks.contains(text)) {
            throw notOneOf(name, text, ranks);
        }
        return OptionalInt.of(ranks.indexOf(text));
    }

    static Optional<OffsetDateTime> time(String name, String text) {
        if (text == null) {
            return Optional.empty();
        }
        try {
            OffsetDateTime time = text.length() == 10
                    ? LocalDate.parse(text).atStartOfDay().atOffset(ZoneOffset.UTC)
                    : OffsetDateTime.parse(text);
            if (time.getYear() >= 1 && time.getYear() <= LAST_YEAR) {
                return Optional.of(time);
            }
        } catch (DateTimeException e) {
            // told below, with the name
        }
        throw bad(name, text, "is no time: write 2026-01-12, or 2026-01-12T18:05:00Z");
    }

    static OptionalDouble number(String name, String text) {
        if (text == null) {
            return OptionalDouble.empty();
        }
        try {
            double number = Double.parseDouble(text);
            if (Double.isFinite(number)) {
                return OptionalDouble.of(number);
            }
        } catch (NumberFormatException e) {
            // told below, with the name
        }
        throw bad(name, text, "is no number: write it with a decimal point, as in 47.5");
    }

    /** Refuses a range that nothing can lie in. */
    static Bounds bounds(FilterRange range, String from, String to) {
        Bounds bounds = new Bounds(number(range.from(), from), number(range.to(), to));
        if (bounds.from().isPresent()
                && bounds.to().isPresent()
                && bounds.from().getAsDouble() > bounds.to().getAsDouble()) {
            throw bad(range.from(), from, "lies above " + range.to() + " = " + to + ": exchange them");
        }
        return bounds;
    }

    private static Refusal notOneOf(String name, String value, List<String> known) {
        String meant = NearestName.of(value, known)
                .map(nearest -> "; did you mean " + nearest + "?")
                .orElse(": choose one of them");
        return bad(name, value, "is not one of " + String.join(", ", known) + meant);
    }

    private static Refusal bad(String name, String value, String rest) {
        return new Refusal(ErrorCode.BAD_REQUEST, name + " = " + value + " " + rest);
    }
}
