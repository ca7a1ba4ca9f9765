package org.tableweather.schema.table;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The columns of {@code climate.csv}, in the order in which they are written. */
public enum ClimateColumn implements Column {
    INSTRUMENT("instrument"),
    TIME("time"),
    TEMP_C("temp_c", "Cel", -20, 60),
    TEMP_F("temp_f", "[degF]", -4, 140),
    RH_PCT("rh_pct", "%", 0, 100),
    PRESSURE_HPA("pressure_hpa", "hPa", 500, 1100),
    BED_C("bed_c", "Cel", -20, 80),
    BED_F("bed_f", "[degF]", -4, 176),
    PLACEMENT("placement");

    private static final List<ClimateColumn> ALL = List.of(values());
    private static final Set<String> HEADERS =
            Stream.of(values()).map(ClimateColumn::header).collect(Collectors.toUnmodifiableSet());

    private final String header;
    private final String unit;
    private final double min;
    private final double max;

    ClimateColumn(String header) {
        this(header, "", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    ClimateColumn(String header, String unit, double min, double max) {
        this.header = header;
        this.unit = unit;
        this.min = min;
        this.max = max;
    }

    /** All columns. */
    public static List<ClimateColumn> all() {
        return ALL;
    }

    /** All names. */
    public static Set<String> headers() {
        return HEADERS;
    }

    @Override
    public String header() {
        return header;
    }

    @Override
    public String unit() {
        return unit;
    }

    /** Also one of {@link #TEMP_C} and {@link #TEMP_F} must be there. */
    @Override
    public boolean required() {
        return this == INSTRUMENT || this == TIME || this == RH_PCT;
    }

    @Override
    public double min() {
        return min;
    }

    @Override
    public double max() {
        return max;
    }
}
