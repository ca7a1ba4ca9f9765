package org.tableweather.analyzers.standard.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.tableweather.analyzers.spi.ParameterInfo;

/** What may be explained by the climate. */
public enum Response {
    FINAL_REBOUND_ANGLE(
            "final_rebound_angle_deg",
            Measure.FINAL_REBOUND_ANGLE,
            "final rebound angle",
            "deg",
            "°",
            2,
            "damp tightens the rebound, dry opens it",
            "damp opens the rebound, dry tightens it"),
    LANDING_OFFSET(
            "landing_offset_dia",
            Measure.LANDING_OFFSET,
            "landing offset",
            "diamonds",
            " diamonds",
            3,
            "the ball lands shorter when damp, longer when dry",
            "the ball lands longer when damp, shorter when dry"),
    SPEED_KEPT(
            "speed_kept",
            Measure.SPEED_KEPT,
            "share of speed kept at the first rail",
            "1",
            "",
            4,
            "the rail takes more speed when damp, less when dry",
            "the rail takes less speed when damp, more when dry");

    /** The parameter's value, and the column of the trials where there is one. */
    public final String parameter;

    /** Its column. */
    public final Measure measure;
    /** Names it in a sentence. */
    public final String noun;
    /** Unit of the estimates, in words. */
    public final String unit;
    /** Follows a figure in a sentence. */
    public final String sign;
    /** Decimals of a figure in a sentence. */
    public final int decimals;
    /** What a fall with humidity means at the table. */
    public final String falling;
    /** What a rise with humidity means at the table. */
    public final String rising;

    Response(
            String parameter,
            Measure measure,
            String noun,
            String unit,
            String sign,
            int decimals,
            String falling,
            String rising) {
        this.parameter = parameter;
        this.measure = measure;
        this.noun = noun;
        this.unit = unit;
        this.sign = sign;
        this.decimals = decimals;
        this.falling = falling;
        this.rising = rising;
    }

    /** Label of an axis, with its unit where it has one. */
    public String axis() {
        return unit.equals("1") ? noun : noun + ", " + unit;
    }

    /** The unit of its change per something, in words. */
    public String per(String something) {
        return unit.equals("1") ? something : unit + " " + something;
    }

    /**
     * The parameter that asks for one.
     *
     * @param what is done with it, in words
     */
    public static ParameterInfo asked(String what) {
        return new ParameterInfo("response", what, "1", FINAL_REBOUND_ANGLE.parameter, parameters());
    }

    /** Columns of the trials: these, then those that the responses are read from. */
    public static List<String> columnsWith(String... first) {
        return Stream.concat(
                        Stream.of(first),
                        Stream.of(
                                "rebound_angle_deg",
                                "final_rebound_angle_deg",
                                "landing_offset_dia",
                                "approach_speed_mps",
                                "rebound_speed_mps"))
                .toList();
    }

    /** The values of the parameter. */
    public static List<String> parameters() {
        return Arrays.stream(values()).map(response -> response.parameter).toList();
    }

    /**
     * The response of a parameter's value.
     *
     * @throws IllegalArgumentException for another value; the message lists those allowed
     */
    public static Response of(String parameter) {
        return Arrays.stream(values())
                .filter(response -> response.parameter.equals(parameter))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("parameter response = " + parameter + " is not one of "
                        + String.join(", ", parameters()) + ": choose one of them"));
    }
}
