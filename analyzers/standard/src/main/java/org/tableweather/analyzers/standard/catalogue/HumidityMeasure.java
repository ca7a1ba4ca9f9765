package org.tableweather.analyzers.standard.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.spi.ParameterInfo;
import org.tableweather.analyzers.standard.climate.ClothBlend;
import org.tableweather.analyzers.standard.climate.Fibre;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.record.Cloth;

/**
 * What is taken for humidity, each from an origin and in a unit that makes a step of one about as large as 10 %RH at 21 °C:
 * {@code x = (value − origin)/unit}. Air is taken at sea-level pressure, which none of these values feels by more than its
 * enhancement factor.
 *
 * @source ASHRAE2017
 */
public enum HumidityMeasure {
    /** Relative humidity of the room's air, from 50 % in 10 %. */
    RELATIVE("relative-humidity", "relative humidity", "%RH", 50, 10) {
        @Override
        double reading(double rhPct, double tempC, SessionTraits traits) {
            return rhPct;
        }
    },
    /** Absolute humidity of the room's air, from 9 g/m³ in 2 g/m³. */
    ABSOLUTE("absolute-humidity", "absolute humidity", "g/m³", 9, 2) {
        @Override
        double reading(double rhPct, double tempC, SessionTraits traits) {
            return MoistAir.of(tempC, rhPct).absoluteHumidityGPerM3();
        }
    },
    /** Dew point of the room's air, from 10 °C in 3 K. */
    DEW_POINT("dew-point", "dew point", "°C", 10, 3) {
        @Override
        double reading(double rhPct, double tempC, SessionTraits traits) {
            return MoistAir.of(tempC, rhPct).dewPointC();
        }
    },
    /** Estimated regain of the cloth in equilibrium with the room's air, from 10 % of dry mass in 2 %. */
    CLOTH_REGAIN("cloth-regain", "estimated regain of the cloth", "% of dry mass", 10, 2) {
        @Override
        double reading(double rhPct, double tempC, SessionTraits traits) {
            if (!Fibre.HUMIDITY.contains(rhPct) || !Fibre.TEMPERATURE.contains(tempC)) {
                return Double.NaN;
            }
            return blend(traits).map(blend -> blend.regainPct(rhPct, tempC)).orElse(Double.NaN);
        }
    },
    /** Relative humidity of the room's vapour at the bed's temperature, from 40 % in 10 %. */
    AT_BED("bed-relative-humidity", "relative humidity at the bed", "%RH", 40, 10) {
        @Override
        double reading(double rhPct, double tempC, SessionTraits traits) {
            double bedC = traits.bedC();
            if (Double.isNaN(bedC) || !MoistAir.SURFACE.contains(bedC)) {
                return Double.NaN;
            }
            MoistAir air = MoistAir.of(tempC, rhPct);
            return air.condensesOn(bedC) ? Double.NaN : air.rhPctAt(bedC);
        }
    };

    private static final double STANDARD_C = 21;
    private static final int HALVINGS = 60;

    /** The parameter's value. */
    public final String parameter;
    /** Names it in a sentence. */
    public final String noun;
    /** Its unit, in words. */
    public final String unit;
    /** Where x is 0, in its unit. */
    public final double origin;
    /** A step of one in x, in its unit. */
    public final double step;

    HumidityMeasure(String parameter, String noun, String unit, double origin, double step) {
        this.parameter = parameter;
        this.noun = noun;
        this.unit = unit;
        this.origin = origin;
        this.step = step;
    }

    abstract double reading(double rhPct, double tempC, SessionTraits traits);

    /**
     * The value.
     *
     * @param rhPct relative humidity of the room's air, %
     * @param tempC temperature of the room's air, °C
     * @param traits for the cloth and the bed
     * @return NaN where it is not known: outside the formulas' ranges, a cloth or a bed that is not stated
     */
    public double value(double rhPct, double tempC, SessionTraits traits) {
        boolean known = rhPct >= 5 && rhPct <= 100 && tempC >= 0 && MoistAir.TEMPERATURE.contains(tempC);
        return known ? reading(rhPct, tempC, traits) : Double.NaN;
    }

    /** The value from its origin in its step: the model's column. */
    public double x(double rhPct, double tempC, SessionTraits traits) {
        return (value(rhPct, tempC, traits) - origin) / step;
    }

    /** Whether a session states what the measure needs beside the air. */
    public boolean isKnown(SessionTraits traits) {
        return !Double.isNaN(value(50, STANDARD_C, traits)) || this == AT_BED && !Double.isNaN(traits.bedC());
    }

    /** x of a relative humidity at 21 °C; at the bed of that humidity there. */
    double atStandard(double rhPct, SessionTraits typical) {
        return this == RELATIVE || this == AT_BED ? (rhPct - origin) / step : x(rhPct, STANDARD_C, typical);
    }

    /** The relative humidity at 21 °C of an x, at the nearest end where there is none; at the bed of that x there. */
    double rhPct(double x, SessionTraits typical) {
        if (this == RELATIVE || this == AT_BED) {
            return origin + step * x;
        }
        double low = this == CLOTH_REGAIN ? Fibre.HUMIDITY.min() : 5;
        double high = this == CLOTH_REGAIN ? Fibre.HUMIDITY.max() : 100;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            boolean below = atStandard(middle, typical) < x;
            low = below ? middle : low;
            high = below ? high : middle;
        }
        return (low + high) / 2;
    }

    /** Follows the response's unit. */
    String per() {
        return "per " + Figures.plain(step) + " " + (this == DEW_POINT ? "K" : unit);
    }

    /** The origin in words. */
    String at() {
        return Figures.plain(origin) + " " + unit;
    }

    private static Optional<ClothBlend> blend(SessionTraits traits) {
        if (traits.polyesterPct() > 0) {
            return Optional.empty();
        }
        return ClothBlend.of(new Cloth(
                stated(traits.woolPct()),
                stated(traits.nylonPct()),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty()));
    }

    private static OptionalDouble stated(double number) {
        return Double.isNaN(number) ? OptionalDouble.empty() : OptionalDouble.of(number);
    }

    /**
     * The parameter that asks for one.
     *
     * @param what it is for
     */
    public static ParameterInfo parameter(String what) {
        return new ParameterInfo(HumidityQuestion.MEASURE, what, "1", RELATIVE.parameter, parameters());
    }

    /** The values of the parameter. */
    public static List<String> parameters() {
        return Arrays.stream(values()).map(measure -> measure.parameter).toList();
    }

    /** The measure of a parameter's value, which must be one of {@link #parameters()}. */
    public static HumidityMeasure of(String parameter) {
        return Arrays.stream(values())
                .filter(measure -> measure.parameter.equals(parameter))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("parameter humidity_measure = " + parameter
                        + " is not one of " + String.join(", ", parameters()) + ": choose one of them"));
    }
}
