package org.tableweather.release;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.apache.parquet.io.api.Binary;
import org.apache.parquet.io.api.RecordConsumer;

/**
 * One column of a table and how a row fills it; nothing is written for what was not measured.
 *
 * @param <R> the row
 * @param name as in the file: snake_case with the unit at the end
 * @param type of its cells
 * @param required whether every row of every file has it
 * @param dictionary whether few different values come again and again, so that a dictionary pays
 * @param unit UCUM code; empty for texts and times
 * @param description in words
 * @param cell how a row fills it
 */
record TableColumn<R>(
        String name,
        ColumnType type,
        boolean required,
        boolean dictionary,
        String unit,
        String description,
        Cell<R> cell) {
    private static final long MICROS = 1_000_000;
    private static final int NANOS_OF_MICRO = 1000;

    /** Writes one cell. */
    interface Cell<R> {
        /** Whether the row has a value. */
        boolean isPresent(R row);

        /** Hands over the value that is there. */
        void put(R row, RecordConsumer to);
    }

    /** A cell that is fetched once to see whether it is there, and again to be written. */
    private record Fetched<R, V>(Function<R, V> value, Function<V, Boolean> present, Put<V> put) implements Cell<R> {
        @Override
        public boolean isPresent(R row) {
            return present.apply(value.apply(row));
        }

        @Override
        public void put(R row, RecordConsumer to) {
            put.put(to, value.apply(row));
        }
    }

    private interface Put<V> {
        void put(RecordConsumer to, V value);
    }

    private record Number<R>(ToDoubleFunction<R> value) implements Cell<R> {
        @Override
        public boolean isPresent(R row) {
            double number = value.applyAsDouble(row);
            return number == number;
        }

        @Override
        public void put(R row, RecordConsumer to) {
            // one zero only, so that equal numbers have equal bytes
            to.addDouble(value.applyAsDouble(row) + 0.0);
        }
    }

    private record Count<R>(ToIntFunction<R> value) implements Cell<R> {
        @Override
        public boolean isPresent(R row) {
            return value.applyAsInt(row) >= 0;
        }

        @Override
        public void put(R row, RecordConsumer to) {
            to.addInteger(value.applyAsInt(row));
        }
    }

    /** A text; the empty one is not written. */
    static <R> TableColumn<R> text(String name, String description, Function<R, String> value) {
        return of(
                name,
                ColumnType.TEXT,
                "",
                description,
                new Fetched<R, String>(
                        value, text -> !text.isEmpty(), (to, text) -> to.addBinary(Binary.fromString(text))));
    }

    /** A number; NaN is not written. */
    static <R> TableColumn<R> number(String name, String unit, String description, ToDoubleFunction<R> value) {
        return of(name, ColumnType.NUMBER, unit, description, new Number<>(value));
    }

    /** A count; a negative one is not written. */
    static <R> TableColumn<R> count(String name, String unit, String description, ToIntFunction<R> value) {
        return of(name, ColumnType.COUNT, unit, description, new Count<>(value));
    }

    /** A time, without what is finer than a microsecond. */
    static <R> TableColumn<R> time(String name, String description, Function<R, Optional<Instant>> value) {
        return of(
                name,
                ColumnType.TIME,
                "",
                description,
                new Fetched<R, Optional<Instant>>(
                        value, Optional::isPresent, (to, time) -> time.ifPresent(t -> to.addLong(micros(t)))));
    }

    /** A day. */
    static <R> TableColumn<R> date(String name, String description, Function<R, Optional<LocalDate>> value) {
        return of(
                name,
                ColumnType.DATE,
                "",
                description,
                new Fetched<R, Optional<LocalDate>>(
                        value,
                        Optional::isPresent,
                        (to, date) -> date.ifPresent(d -> to.addInteger(Math.toIntExact(d.toEpochDay())))));
    }

    /** True, false, or not stated. */
    static <R> TableColumn<R> truth(String name, String description, Function<R, Optional<Boolean>> value) {
        return of(
                name,
                ColumnType.TRUTH,
                "",
                description,
                new Fetched<R, Optional<Boolean>>(
                        value, Optional::isPresent, (to, truth) -> truth.ifPresent(to::addBoolean)));
    }

    private static <R> TableColumn<R> of(String name, ColumnType type, String unit, String description, Cell<R> cell) {
        return new TableColumn<>(name, type, false, type.hasDictionary(), unit, description, cell);
    }

    /** The same, filled in every row of every file. */
    TableColumn<R> always() {
        return new TableColumn<>(name, type, true, dictionary, unit, description, cell);
    }

    /** What a time has beyond whole microseconds, ns; −1 when nothing. */
    static int nanosBeyondMicros(Instant time) {
        int beyond = time.getNano() % NANOS_OF_MICRO;
        return beyond == 0 ? -1 : beyond;
    }

    private static long micros(Instant time) {
        return Math.addExact(Math.multiplyExact(time.getEpochSecond(), MICROS), time.getNano() / NANOS_OF_MICRO);
    }
}
