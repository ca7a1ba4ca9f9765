package org.tableweather.server.guide;

import jakarta.ws.rs.core.MultivaluedMap;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.tableweather.schema.caution.Caution;
import org.tableweather.schema.caution.Cautions;
import org.tableweather.schema.caution.HeldClimate;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.server.web.Field;

/**
 * A climate to be held, and what to mind.
 *
 * @param fields of the form
 * @param asked whether a whole climate was typed
 * @param air the climate in words, with its dew point; empty until asked
 * @param cautions what it calls for
 */
record CautionsView(List<Field> fields, boolean asked, String air, List<CautionView> cautions) {
    static final String[] PARAMETERS = {"tempC", "rhPct", "hours", "bedC"};
    private static final double LONGEST_H = 240;

    CautionsView {
        fields = List.copyOf(fields);
        cautions = List.copyOf(cautions);
    }

    /**
     * One caution.
     *
     * @param level how grave, in words
     * @param advice what to do
     * @param figures value and bound
     * @param reference key of the source
     */
    record CautionView(String level, String advice, String figures, String reference) {

        static CautionView of(Caution caution) {
            return new CautionView(
                    caution.level().name().toLowerCase(Locale.ROOT),
                    caution.advice(),
                    String.format(Locale.ROOT, "%.1f %s, bound %.1f", caution.value(), caution.unit(), caution.bound()),
                    caution.reference());
        }
    }

    static CautionsView of(MultivaluedMap<String, String> query) {
        Field tempC = Field.of(query, "tempC", "Air temperature, °C", 0, 60);
        Field rhPct = Field.of(query, "rhPct", "Relative humidity, %", 1, 100);
        Field hours = Field.of(query, "hours", "Held for, hours", 0, LONGEST_H);
        Field bedC = Field.of(query, "bedC", "Bed of the table, °C (may stay empty)", -10, 60);
        List<Field> fields = List.of(tempC, rhPct, hours, bedC);
        boolean bad = fields.stream().anyMatch(Field::isBad);
        if (bad || tempC.value().isEmpty() || rhPct.value().isEmpty()) {
            return new CautionsView(fields, false, "", List.of());
        }
        MoistAir air = MoistAir.of(tempC.value().getAsDouble(), rhPct.value().getAsDouble());
        return new CautionsView(
                fields,
                true,
                words(air),
                cautions(air, hours.value(), bedC.value()).stream()
                        .map(CautionView::of)
                        .toList());
    }

    private static List<Caution> cautions(MoistAir air, OptionalDouble hours, OptionalDouble bedC) {
        Duration held = Duration.ofMinutes(Math.round(60 * hours.orElse(1)));
        HeldClimate climate = HeldClimate.of(air, held);
        return Cautions.of(bedC.isPresent() ? climate.withBed(bedC.getAsDouble()) : climate);
    }

    private static String words(MoistAir air) {
        return String.format(
                Locale.ROOT,
                "%.1f °C at %.0f %% relative humidity: dew point %.1f °C, %.1f g of water in a cubic metre.",
                air.tempC(),
                air.rhPct(),
                air.dewPointC(),
                air.absoluteHumidityGPerM3());
    }
}
