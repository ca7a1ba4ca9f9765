package org.tableweather.schema.table;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.tableweather.schema.record.Kind;

/** The columns of {@code trials.csv}, in the order in which they are written. */
public enum TrialColumn implements Column {
    SESSION("session"),
    TRIAL("trial"),
    STARTED_AT("started_at"),
    KIND("kind"),
    SHOT("shot"),
    BALL("ball"),
    TEMP_C("temp_c", "Cel", -20, 60),
    TEMP_F("temp_f", "[degF]", -4, 140, TEMP_C, 1 / 1.8, 32, 0.1),
    RH_PCT("rh_pct", "%", 0, 100),
    APPROACH_ANGLE_DEG("approach_angle_deg", "deg", 0, 90),
    APPROACH_SPEED_MPS("approach_speed_mps", "m/s", 0, 20),
    APPROACH_SPEED_MPH("approach_speed_mph", "[mi_i]/h", 0, 45, APPROACH_SPEED_MPS, 0.44704, 0, 0.05),
    SIDE_SPIN_RPS("side_spin_rps", "{rev}/s", -100, 100),
    ROLL_RATIO("roll_ratio", "1", -5, 5),
    TIP_OFFSET_MM("tip_offset_mm", "mm", -31, 31),
    TIP_OFFSET_IN("tip_offset_in", "[in_i]", -1.25, 1.25, TIP_OFFSET_MM, 25.4, 0, 0.5),
    REBOUND_ANGLE_DEG("rebound_angle_deg", "deg", -90, 90),
    REBOUND_SPEED_MPS("rebound_speed_mps", "m/s", 0, 20),
    REBOUND_SPEED_MPH("rebound_speed_mph", "[mi_i]/h", 0, 45, REBOUND_SPEED_MPS, 0.44704, 0, 0.05),
    FINAL_REBOUND_ANGLE_DEG("final_rebound_angle_deg", "deg", -90, 90),
    LANDING_OFFSET_DIA("landing_offset_dia", "{diamond}", -8, 8),
    MADE("made"),
    RAILS("rails", "1", 0, 20),
    RUN_OUT_M("run_out_m", "m", 0, 60),
    RUN_OUT_LENGTHS("run_out_lengths", "1", 0, 20),
    OBJECT_ANGLE_DEG("object_angle_deg", "deg", -90, 90),
    DEFLECTION_ANGLE_DEG("deflection_angle_deg", "deg", -45, 45),
    HOP_HEIGHT_MM("hop_height_mm", "mm", 0, 2000),
    HOP_HEIGHT_IN("hop_height_in", "[in_i]", 0, 80, HOP_HEIGHT_MM, 25.4, 0, 0.5),
    BALLS_MADE("balls_made", "1", 0, 21),
    SPREAD_NEAREST_MM("spread_nearest_mm", "mm", 0, 2000),
    CUE_BALL_TRAVEL_M("cue_ball_travel_m", "m", 0, 60),
    APPROACH_ANGLE_U_DEG("approach_angle_u_deg", "deg", 0, 45),
    APPROACH_SPEED_U_MPS("approach_speed_u_mps", "m/s", 0, 10),
    REBOUND_ANGLE_U_DEG("rebound_angle_u_deg", "deg", 0, 45),
    REBOUND_SPEED_U_MPS("rebound_speed_u_mps", "m/s", 0, 10),
    FINAL_REBOUND_ANGLE_U_DEG("final_rebound_angle_u_deg", "deg", 0, 45),
    LANDING_OFFSET_U_DIA("landing_offset_u_dia", "{diamond}", 0, 4),
    RUN_OUT_U_M("run_out_u_m", "m", 0, 30),
    RUN_OUT_U_LENGTHS("run_out_u_lengths", "1", 0, 10),
    OBJECT_ANGLE_U_DEG("object_angle_u_deg", "deg", 0, 45),
    DEFLECTION_ANGLE_U_DEG("deflection_angle_u_deg", "deg", 0, 22.5),
    HOP_HEIGHT_U_MM("hop_height_u_mm", "mm", 0, 1000),
    SPREAD_NEAREST_U_MM("spread_nearest_u_mm", "mm", 0, 1000),
    CUE_BALL_TRAVEL_U_M("cue_ball_travel_u_m", "m", 0, 30),
    NOTE("note");

    private static final List<TrialColumn> ALL = List.of(values());
    private static final Set<String> HEADERS =
            Stream.of(values()).map(TrialColumn::header).collect(Collectors.toUnmodifiableSet());

    private final String header;
    private final String unit;
    private final double min;
    private final double max;
    private final TrialColumn standard;
    private final double factor;
    private final double origin;
    private final double tolerance;
    private final boolean number;

    TrialColumn(String header) {
        this(header, "", Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    TrialColumn(String header, String unit, double min, double max) {
        this(header, unit, min, max, null, 1, 0, 0);
    }

    TrialColumn(
            String header,
            String unit,
            double min,
            double max,
            TrialColumn standard,
            double factor,
            double origin,
            double tolerance) {
        this.header = header;
        this.unit = unit;
        this.min = min;
        this.max = max;
        this.standard = standard == null ? this : standard;
        this.factor = factor;
        this.origin = origin;
        this.tolerance = tolerance;
        this.number = !unit.isEmpty();
    }

    /** All columns. */
    public static List<TrialColumn> all() {
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

    @Override
    public boolean required() {
        return this == SESSION || this == TRIAL || this == KIND || this == SHOT;
    }

    @Override
    public double min() {
        return min;
    }

    @Override
    public double max() {
        return max;
    }

    /** Whether its cells are numbers. */
    public boolean isNumber() {
        return number;
    }

    /** Whether its cells are whole numbers. */
    public boolean isCount() {
        return this == RAILS || this == BALLS_MADE;
    }

    /** The column of the same quantity in the unit of the records; itself for most. */
    public TrialColumn standard() {
        return standard;
    }

    /**
     * Converts to the unit of {@link #standard()}.
     *
     * @param value in this column's unit
     */
    public double toStandard(double value) {
        return (value - origin) * factor;
    }

    /** How far a value may be from one written beside it in the other unit, in the unit of {@link #standard()}. */
    public double tolerance() {
        return tolerance;
    }

    /** The columns that state the standard uncertainty of another. */
    public static List<TrialColumn> uncertainties() {
        return ALL.stream().filter(column -> column.header.contains("_u_")).toList();
    }

    /** The column that states this one's standard uncertainty. */
    public Optional<TrialColumn> uncertainty() {
        int unitAt = standard.header.lastIndexOf('_');
        String name = unitAt < 0 ? "" : standard.header.substring(0, unitAt) + "_u" + standard.header.substring(unitAt);
        return ALL.stream().filter(column -> column.header.equals(name)).findFirst();
    }

    /**
     * The columns of which a trial of this kind needs at least one.
     *
     * @param kind what the trial tests
     */
    public static List<TrialColumn> outcomes(Kind kind) {
        return KindOutcomes.of(kind).needsOneOf();
    }
}
