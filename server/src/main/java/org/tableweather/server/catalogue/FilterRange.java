package org.tableweather.server.catalogue;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Stream;

/** What may be asked for by a lowest and a highest value: the parameters {@code nameFrom} and {@code nameTo}. */
enum FilterRange {
    /** Air temperature, °C. */
    TEMPERATURE("temp", "s.temp_min_c", "s.temp_max_c", "t.climate_temp_c", null),
    /** Relative humidity, %. */
    RELATIVE_HUMIDITY("rh", "s.rh_min_pct", "s.rh_max_pct", "t.climate_rh_pct", null),
    /** g/m³. */
    ABSOLUTE_HUMIDITY("absoluteHumidity", AirMeasure.ABSOLUTE_HUMIDITY),
    /** °C. */
    DEW_POINT("dewPoint", AirMeasure.DEW_POINT),
    /** Pa. */
    VAPOUR_PRESSURE("vapourPressure", AirMeasure.VAPOUR_PRESSURE),
    /** g/kg. */
    MIXING_RATIO("mixingRatio", AirMeasure.MIXING_RATIO),
    /** % of dry mass. */
    CLOTH_REGAIN("clothRegain", AirMeasure.CLOTH_REGAIN),
    /** %. */
    BED_RELATIVE_HUMIDITY("bedRelativeHumidity", AirMeasure.BED_RELATIVE_HUMIDITY),
    /** Nose to nose, mm. */
    PLAYING_LENGTH("playingLength", "s.playing_length_mm"),
    /** Wool in the cloth by mass, %. */
    WOOL("wool", "s.wool_pct"),
    /** Days from the cloth's fitting to the session. */
    CLOTH_AGE("clothAge", "s.cloth_age_days");

    private final String parameter;
    private final String low;
    private final String high;
    private final String trial;
    private final AirMeasure measure;

    FilterRange(String parameter, String low, String high, String trial, AirMeasure measure) {
        this.parameter = parameter;
        this.low = low;
        this.high = high;
        this.trial = trial;
        this.measure = measure;
    }

    FilterRange(String parameter, String ofSession) {
        this(parameter, ofSession, ofSession, null, null);
    }

    FilterRange(String parameter, AirMeasure measure) {
        this(parameter, "m.low", "m.high", null, measure);
    }

    String from() {
        return parameter + "From";
    }

    String to() {
        return parameter + "To";
    }

    /** The measure that no column holds, when it is one. */
    Optional<AirMeasure> measure() {
        return Optional.ofNullable(measure);
    }

    /** Whether it says something of each trial, and not of its session as a whole. */
    boolean isOfTrials() {
        return trial != null || measure != null;
    }

    /** Adds what a session must satisfy to hold any such trial. */
    void touching(Where where, Bounds bounds) {
        add(where, bounds, high + " >= ?", low + " <= ?");
    }

    /** Adds what makes every trial of a session pass. */
    void covering(Where where, Bounds bounds) {
        if (isOfTrials()) {
            where.and("s.climate_complete");
            add(where, bounds, low + " >= ?", high + " <= ?");
        }
    }

    private void add(Where where, Bounds bounds, String fromCondition, String toCondition) {
        Where inner = new Where();
        bounds.from().ifPresent(bound -> inner.and(fromCondition, bound));
        bounds.to().ifPresent(bound -> inner.and(toCondition, bound));
        if (measure == null) {
            where.and(inner);
        } else {
            where.and(
                    "EXISTS (SELECT FROM session_measure m WHERE m.session_id = s.id AND m.measure = '"
                            + measure.storedName() + "' AND ",
                    inner,
                    ")");
        }
    }

    /** Adds what a trial must satisfy, where a column holds it. */
    void ofTrial(Where where, Bounds bounds) {
        if (trial != null) {
            bounds.from().ifPresent(bound -> where.and(trial + " >= ?", bound));
            bounds.to().ifPresent(bound -> where.and(trial + " <= ?", bound));
        }
    }

    /** All parameters of ranges. */
    static Stream<String> parameters() {
        return Arrays.stream(values()).flatMap(range -> Stream.of(range.from(), range.to()));
    }
}
