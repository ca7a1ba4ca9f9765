package org.tableweather.schema.logger;

import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** What is known of a log; the rest is guessed, and the guesses are told. Immutable. */
public final class LogOptions {
    private final String instrument;
    private String placement = "";
    private List<String> timeColumns = List.of();
    private Optional<String> tempColumn = Optional.empty();
    private Optional<TempUnit> tempUnit = Optional.empty();
    private Optional<String> rhColumn = Optional.empty();
    private Optional<String> pressureColumn = Optional.empty();
    private Optional<String> timePattern = Optional.empty();
    private Optional<ZoneId> zone = Optional.empty();
    private Duration clockAhead = Duration.ZERO;
    private double gapFactor = 3;

    private LogOptions(String instrument) {
        this.instrument = instrument;
    }

    /** Units of temperature. */
    public enum TempUnit {
        /** °C. */
        CELSIUS,
        /** °F. */
        FAHRENHEIT
    }

    /**
     * Nothing known but the instrument.
     *
     * @param instrument id of the instrument in the contribution
     */
    public static LogOptions of(String instrument) {
        return new LogOptions(instrument);
    }

    private LogOptions copy() {
        LogOptions copy = new LogOptions(instrument);
        copy.placement = placement;
        copy.timeColumns = timeColumns;
        copy.tempColumn = tempColumn;
        copy.tempUnit = tempUnit;
        copy.rhColumn = rhColumn;
        copy.pressureColumn = pressureColumn;
        copy.timePattern = timePattern;
        copy.zone = zone;
        copy.clockAhead = clockAhead;
        copy.gapFactor = gapFactor;
        return copy;
    }

    /** The same, with the place of the sensor: {@code room}, {@code bed} ... */
    public LogOptions withPlacement(String value) {
        LogOptions copy = copy();
        copy.placement = value;
        return copy;
    }

    /**
     * The same, with the column of the time, or those of date and time.
     *
     * @throws IllegalArgumentException for more than two columns
     */
    public LogOptions withTimeColumns(List<String> value) {
        if (value.size() > 2) {
            throw new IllegalArgumentException("timeColumns " + value + " are more than two: give date and time");
        }
        LogOptions copy = copy();
        copy.timeColumns = List.copyOf(value);
        return copy;
    }

    /** The same, with the column of the air temperature. */
    public LogOptions withTempColumn(String value) {
        LogOptions copy = copy();
        copy.tempColumn = Optional.of(value);
        return copy;
    }

    /** The same, with the unit of the temperature. */
    public LogOptions withTempUnit(TempUnit value) {
        LogOptions copy = copy();
        copy.tempUnit = Optional.of(value);
        return copy;
    }

    /** The same, with the column of the relative humidity. */
    public LogOptions withRhColumn(String value) {
        LogOptions copy = copy();
        copy.rhColumn = Optional.of(value);
        return copy;
    }

    /** The same, with the column of the station's pressure; its unit is told by its name, else hPa. */
    public LogOptions withPressureColumn(String value) {
        LogOptions copy = copy();
        copy.pressureColumn = Optional.of(value);
        return copy;
    }

    /** The same, with the pattern of the times, as {@link java.time.format.DateTimeFormatter} has it. */
    public LogOptions withTimePattern(String value) {
        LogOptions copy = copy();
        copy.timePattern = Optional.of(value);
        return copy;
    }

    /** The same, with the zone in which the logger's clock ran; needed for stamps without an offset. */
    public LogOptions withZone(ZoneId value) {
        LogOptions copy = copy();
        copy.zone = Optional.of(value);
        return copy;
    }

    /** The same, with how far the logger's clock ran ahead; it is taken off each time. */
    public LogOptions withClockAhead(Duration value) {
        LogOptions copy = copy();
        copy.clockAhead = value;
        return copy;
    }

    /**
     * The same, with how many median steps make a gap; 3 unless set.
     *
     * @throws IllegalArgumentException when not above 1
     */
    public LogOptions withGapFactor(double value) {
        if (!(value > 1)) {
            throw new IllegalArgumentException("gapFactor must be > 1, got " + value);
        }
        LogOptions copy = copy();
        copy.gapFactor = value;
        return copy;
    }

    String instrument() {
        return instrument;
    }

    String placement() {
        return placement;
    }

    List<String> timeColumns() {
        return timeColumns;
    }

    Optional<String> tempColumn() {
        return tempColumn;
    }

    Optional<TempUnit> tempUnit() {
        return tempUnit;
    }

    Optional<String> rhColumn() {
        return rhColumn;
    }

    Optional<String> pressureColumn() {
        return pressureColumn;
    }

    Optional<String> timePattern() {
        return timePattern;
    }

    Optional<ZoneId> zone() {
        return zone;
    }

    Duration clockAhead() {
        return clockAhead;
    }

    double gapFactor() {
        return gapFactor;
    }
}
