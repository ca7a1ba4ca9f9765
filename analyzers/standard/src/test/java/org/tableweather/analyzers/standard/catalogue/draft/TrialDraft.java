package org.tableweather.analyzers.standard.catalogue.draft;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/** A trial of which only some columns are measured. */
public final class TrialDraft {

    /** Columns that a draft may fill. */
    public enum Column {
        APPROACH_ANGLE_DEG,
        APPROACH_SPEED_MPS,
        SIDE_SPIN_RPS,
        ROLL_RATIO,
        TIP_OFFSET_MM,
        REBOUND_ANGLE_DEG,
        REBOUND_SPEED_MPS,
        FINAL_REBOUND_ANGLE_DEG,
        LANDING_OFFSET_DIA,
        RUN_OUT_M,
        RUN_OUT_LENGTHS,
        OBJECT_ANGLE_DEG,
        DEFLECTION_ANGLE_DEG,
        HOP_HEIGHT_MM,
        SPREAD_NEAREST_MM,
        CUE_BALL_TRAVEL_M
    }

    private final Kind kind;
    private final String id;
    private final Map<Column, Double> columns = new EnumMap<>(Column.class);
    private String shot = "test-shot";
    private Climate climate = Climate.NONE;
    private Optional<Instant> startedAt = Optional.empty();
    private Made made = Made.NOT_STATED;
    private int rails = -1;
    private int ballsMade = -1;

    public TrialDraft(Kind kind, int number) {
        this(kind, Integer.toString(number));
    }

    public TrialDraft(Kind kind, String id) {
        this.kind = kind;
        this.id = id;
    }

    public TrialDraft shot(String other) {
        shot = other;
        return this;
    }

    public TrialDraft climate(double tempC, double rhPct) {
        climate = new Climate(tempC, rhPct, ClimateSource.NONE);
        return this;
    }

    public TrialDraft with(Column column, double value) {
        columns.put(column, value);
        return this;
    }

    public TrialDraft at(Instant time) {
        startedAt = Optional.of(time);
        return this;
    }

    public TrialDraft made(Made whether) {
        made = whether;
        return this;
    }

    public TrialDraft rails(int count) {
        rails = count;
        return this;
    }

    public TrialDraft ballsMade(int count) {
        ballsMade = count;
        return this;
    }

    private double of(Column column) {
        return columns.getOrDefault(column, Double.NaN);
    }

    public Trial build() {
        return new Trial(
                "session",
                id,
                startedAt,
                kind,
                shot,
                "",
                Double.NaN,
                Double.NaN,
                of(Column.APPROACH_ANGLE_DEG),
                of(Column.APPROACH_SPEED_MPS),
                of(Column.SIDE_SPIN_RPS),
                of(Column.ROLL_RATIO),
                of(Column.TIP_OFFSET_MM),
                of(Column.REBOUND_ANGLE_DEG),
                of(Column.REBOUND_SPEED_MPS),
                of(Column.FINAL_REBOUND_ANGLE_DEG),
                of(Column.LANDING_OFFSET_DIA),
                made,
                rails,
                of(Column.RUN_OUT_M),
                of(Column.RUN_OUT_LENGTHS),
                of(Column.OBJECT_ANGLE_DEG),
                of(Column.DEFLECTION_ANGLE_DEG),
                of(Column.HOP_HEIGHT_MM),
                ballsMade,
                of(Column.SPREAD_NEAREST_MM),
                of(Column.CUE_BALL_TRAVEL_M),
                "",
                climate);
    }
}
