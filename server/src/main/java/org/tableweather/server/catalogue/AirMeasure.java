package org.tableweather.server.catalogue;

import java.util.Arrays;
import java.util.Optional;
import org.tableweather.analyzers.standard.catalogue.HumidityMeasure;
import org.tableweather.analyzers.standard.catalogue.SessionTraits;
import org.tableweather.schema.climate.MoistAir;

/**
 * What follows from temperature and relative humidity, and from cloth and bed where it needs them. Each rises or falls steadily
 * with temperature at a fixed humidity, and rises with humidity at a fixed temperature.
 *
 * @source ASHRAE2017
 */
enum AirMeasure {
    /** Of the room's air, g/m³. */
    ABSOLUTE_HUMIDITY(HumidityMeasure.ABSOLUTE.parameter) {
        @Override
        double value(double tempC, double rhPct, SessionTraits traits) {
            return HumidityMeasure.ABSOLUTE.value(rhPct, tempC, traits);
        }
    },
    /** Of the room's air, °C. */
    DEW_POINT(HumidityMeasure.DEW_POINT.parameter) {
        @Override
        double value(double tempC, double rhPct, SessionTraits traits) {
            return HumidityMeasure.DEW_POINT.value(rhPct, tempC, traits);
        }
    },
    /** Of the room's air, Pa. */
    VAPOUR_PRESSURE("vapour-pressure") {
        @Override
        double value(double tempC, double rhPct, SessionTraits traits) {
            return isAir(tempC, rhPct) ? MoistAir.of(tempC, rhPct).vapourPressurePa() : Double.NaN;
        }
    },
    /** Of the room's air at sea level, g of water per kg of dry air. */
    MIXING_RATIO("mixing-ratio") {
        @Override
        double value(double tempC, double rhPct, SessionTraits traits) {
            return isAir(tempC, rhPct) ? MoistAir.of(tempC, rhPct).humidityRatioGPerKg() : Double.NaN;
        }
    },
    /** Estimated, of the cloth in equilibrium with the room's air, % of dry mass. */
    CLOTH_REGAIN(HumidityMeasure.CLOTH_REGAIN.parameter) {
        @Override
        double value(double tempC, double rhPct, SessionTraits traits) {
            return HumidityMeasure.CLOTH_REGAIN.value(rhPct, tempC, traits);
        }
    },
    /** Of the room's vapour at the bed's temperature, %. */
    BED_RELATIVE_HUMIDITY(HumidityMeasure.AT_BED.parameter) {
        @Override
        double value(double tempC, double rhPct, SessionTraits traits) {
            return HumidityMeasure.AT_BED.value(rhPct, tempC, traits);
        }
    };

    private final String storedName;

    AirMeasure(String storedName) {
        this.storedName = storedName;
    }

    /** The name in the database: the analyzers' name of the measure. */
    String storedName() {
        return storedName;
    }

    /** The value; NaN where it is not known. */
    abstract double value(double tempC, double rhPct, SessionTraits traits);

    /**
     * Between which values it lies while the air stays within a span: without bounds when only a part of the span has values.
     *
     * @return empty when it cannot be known at all
     */
    Optional<Span> span(double lowC, double highC, double lowPct, double highPct, SessionTraits traits) {
        double[] corners = {
            value(lowC, lowPct, traits), value(lowC, highPct, traits),
            value(highC, lowPct, traits), value(highC, highPct, traits)
        };
        if (Arrays.stream(corners).noneMatch(Double::isNaN)) {
            return Optional.of(new Span(
                    Arrays.stream(corners).min().orElseThrow(),
                    Arrays.stream(corners).max().orElseThrow()));
        }
        return isKnowable(traits) ? Optional.of(Span.OPEN) : Optional.empty();
    }

    /** Whether cloth and bed, where it needs them, are stated. */
    private boolean isKnowable(SessionTraits traits) {
        return switch (this) {
            case CLOTH_REGAIN -> HumidityMeasure.CLOTH_REGAIN.isKnown(traits);
            case BED_RELATIVE_HUMIDITY -> HumidityMeasure.AT_BED.isKnown(traits);
            default -> true;
        };
    }

    private static boolean isAir(double tempC, double rhPct) {
        return MoistAir.TEMPERATURE.contains(tempC) && MoistAir.HUMIDITY.contains(rhPct);
    }

    /** Lowest and highest. */
    record Span(double low, double high) {
        static final Span OPEN = new Span(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }
}
