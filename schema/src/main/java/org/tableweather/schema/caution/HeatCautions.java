package org.tableweather.schema.caution;

import java.util.Optional;
import org.tableweather.schema.caution.Caution.Level;
import org.tableweather.schema.climate.Fahrenheit;
import org.tableweather.schema.climate.HeatIndex;
import org.tableweather.schema.climate.MoistAir;

/** People in hot, damp air. */
final class HeatCautions {

    private HeatCautions() {}

    /**
     * By the heat index of the US National Weather Service; air hotter than its range counts as the gravest.
     *
     * @source NwsHeatIndex
     */
    static Optional<Caution> of(MoistAir air) {
        double tempF = Fahrenheit.fromCelsius(air.tempC());
        double end = HeatIndex.TEMPERATURE.max();
        if (tempF > end) {
            String advice =
                    "Air this hot is outside what the heat index was made for: nobody should stay in it to shoot.";
            return Optional.of(Caution.deferring("heat.air", Level.DANGER, advice, tempF, end, "°F", "NwsHeatIndex"));
        }
        HeatIndex.Level level = HeatIndex.level(air.tempC(), air.rhPct());
        return level == HeatIndex.Level.NONE ? Optional.empty() : Optional.of(byIndex(level, tempF, air.rhPct()));
    }

    /** Where the printed chart ends there is no number; the chart's end then stands for it. */
    private static Caution byIndex(HeatIndex.Level level, double tempF, double rhPct) {
        double index = HeatIndex.onChart(tempF, rhPct).orElse(HeatIndex.CHART_END_F);
        String feels = "It feels like " + Math.round(Fahrenheit.toCelsius(index)) + " °C: " + advice(level);
        return Caution.deferring("heat.index", grave(level), feels, index, level.fromF(), "°F", "NwsHeatIndex");
    }

    private static Level grave(HeatIndex.Level level) {
        return switch (level) {
            case NONE, CAUTION -> Level.NOTE;
            case EXTREME_CAUTION -> Level.CAUTION;
            case DANGER, EXTREME_DANGER -> Level.DANGER;
        };
    }

    private static String advice(HeatIndex.Level level) {
        return switch (level) {
            case NONE, CAUTION -> "drink, and rest between series.";
            case EXTREME_CAUTION -> "keep the session short, drink often, stop at the first sign of dizziness.";
            case DANGER -> "effort in it makes people ill. Cool the room before anyone plays.";
            case EXTREME_DANGER -> "nobody should stay in it to shoot. End the session and cool the room.";
        };
    }
}
