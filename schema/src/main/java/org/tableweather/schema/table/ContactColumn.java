package org.tableweather.schema.table;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The columns of {@code contacts.csv}, in the order in which they are written. */
public enum ContactColumn implements Column {
    SESSION("session"),
    TRIAL("trial"),
    SEQ("seq", "1", 1, 1_000_000),
    POINT("point"),
    RAIL("rail"),
    X_DIA("x_dia", "{diamond}", 0, 8),
    Y_DIA("y_dia", "{diamond}", 0, 4),
    X_M("x_m", "m", 0, 4),
    Y_M("y_m", "m", 0, 2),
    X_PX("x_px", "{pixel}", 0, 20_000),
    Y_PX("y_px", "{pixel}", 0, 20_000),
    CAMERA("camera"),
    T_S("t_s", "s", 0, 3600);

    private static final List<ContactColumn> ALL = List.of(values());
    private static final Set<String> HEADERS =
            Stream.of(values()).map(ContactColumn::header).collect(Collectors.toUnmodifiableSet());

    private final String header;
    private final String unit;
    private final double min;
    private final double max;

    ContactColumn(String header) {
        this(header, "", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    ContactColumn(String header, String unit, double min, double max) {
        this.header = header;
        this.unit = unit;
        this.min = min;
        this.max = max;
    }

    /** All columns. */
    public static List<ContactColumn> all() {
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

    /** Also {@code x_dia, y_dia}, or {@code x_m, y_m}, or {@code x_px, y_px} must be there. */
    @Override
    public boolean required() {
        return this == SESSION || this == TRIAL || this == SEQ || this == POINT;
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
