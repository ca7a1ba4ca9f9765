package org.tableweather.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.tableweather.analyzers.standard.climate.AirReading;
import org.tableweather.analyzers.standard.climate.BedClimate;
import org.tableweather.analyzers.standard.climate.ClimateUncertainty;
import org.tableweather.analyzers.standard.climate.ClothBlend;
import org.tableweather.analyzers.standard.uncertainty.Measurand;
import org.tableweather.analyzers.standard.uncertainty.Propagation;
import org.tableweather.analyzers.standard.uncertainty.UncertainInputs;
import org.tableweather.analyzers.standard.uncertainty.UncertainValue;
import org.tableweather.analyzers.standard.uncertainty.UncertaintyBudget;
import org.tableweather.schema.climate.Fahrenheit;
import org.tableweather.schema.climate.HeatIndex;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.climate.StandardAtmosphere;

/** What follows from a thermometer, a hygrometer and perhaps a reading of the bed. */
final class AirFigures {
    private final MoistAir air;
    private final OptionalDouble bedC;
    private final OptionalDouble tempAccuracyK;
    private final OptionalDouble rhAccuracyPct;
    private final double woolPct;
    private final List<Figure> figures = new ArrayList<>();

    /**
     * One value.
     *
     * @param name of the quantity
     * @param value empty where there is none, and words say why
     * @param unit for people
     * @param standardUncertainty from the stated accuracies; empty when one of them is not stated
     * @param reference key of the formula's source
     * @param words what else is to be said
     */
    record Figure(
            String name,
            OptionalDouble value,
            String unit,
            OptionalDouble standardUncertainty,
            String reference,
            Optional<String> words) {}

    AirFigures(
            double tempC,
            double rhPct,
            double altitudeM,
            OptionalDouble bedC,
            OptionalDouble tempAccuracyK,
            OptionalDouble rhAccuracyPct,
            double woolPct) {
        this.air = MoistAir.of(tempC, rhPct, StandardAtmosphere.pressurePa(altitudeM));
        this.bedC = bedC;
        this.tempAccuracyK = tempAccuracyK;
        this.rhAccuracyPct = rhAccuracyPct;
        this.woolPct = woolPct;
    }

    MoistAir air() {
        return air;
    }

    /** All values, the room's first. */
    List<Figure> all() {
        figures.clear();
        if (air.rhPct() > 0) {
            add("dew point", "°C", ClimateUncertainty.dewPointC(reading()), "ASHRAE2017");
            add("absolute humidity", "g/m³", ClimateUncertainty.absoluteHumidityGPerM3(reading()), "ASHRAE2017");
        }
        add("wet bulb", "°C", at((t, rh) -> with(t, rh).wetBulbC()), "ASHRAE2017");
        add("mixing ratio", "g/kg", at((t, rh) -> with(t, rh).humidityRatioGPerKg()), "ASHRAE2017");
        add("enthalpy", "kJ/kg", at((t, rh) -> with(t, rh).enthalpyKJPerKg()), "ASHRAE2017");
        heatIndex();
        if (bedC.isEmpty()) {
            regain("estimated regain of the cloth", uncertain(air.rhPct(), rhAccuracyPct), temperature(air.tempC()));
        } else {
            bed(bedC.getAsDouble());
        }
        return List.copyOf(figures);
    }

    /** A quantity of temperature and humidity. */
    private interface OfAir {
        double value(double tempC, double rhPct);
    }

    private UncertaintyBudget at(OfAir quantity) {
        Measurand model = x -> continued(quantity, x[0], x[1]);
        return Propagation.of(
                model,
                UncertainInputs.none()
                        .and("tempC", temperature(air.tempC()))
                        .and("rhPct", uncertain(air.rhPct(), rhAccuracyPct)));
    }

    /** The steps of a numeric derivative may leave 0 to 100 %: the quantity goes on beyond the edge as it came. */
    private static double continued(OfAir quantity, double tempC, double rhPct) {
        double edge = Math.max(0, Math.min(100, rhPct));
        return edge == rhPct
                ? quantity.value(tempC, rhPct)
                : 2 * quantity.value(tempC, edge) - quantity.value(tempC, 2 * edge - rhPct);
    }

    private MoistAir with(double tempC, double rhPct) {
        return MoistAir.of(tempC, rhPct, air.pressurePa());
    }

    private AirReading reading() {
        return AirReading.of(temperature(air.tempC()), uncertain(air.rhPct(), rhAccuracyPct), air.pressurePa());
    }

    private UncertainValue temperature(double value) {
        return uncertain(value, tempAccuracyK);
    }

    private static UncertainValue uncertain(double value, OptionalDouble halfWidth) {
        return UncertainValue.rectangular(value, halfWidth.orElse(0));
    }

    private void add(String name, String unit, UncertaintyBudget budget, String reference) {
        figures.add(new Figure(
                name,
                OptionalDouble.of(budget.value()),
                unit,
                stated(budget.standardUncertainty()),
                reference,
                Optional.empty()));
    }

    private OptionalDouble stated(double standardUncertainty) {
        return tempAccuracyK.isPresent() && rhAccuracyPct.isPresent()
                ? OptionalDouble.of(standardUncertainty)
                : OptionalDouble.empty();
    }

    private void heatIndex() {
        double tempF = Fahrenheit.fromCelsius(air.tempC());
        if (!HeatIndex.TEMPERATURE.contains(tempF)) {
            none("heat index", "°C", "NwsHeatIndex", "no value outside 40 to 112 °F");
            return;
        }
        OptionalDouble index = HeatIndex.onChart(tempF, air.rhPct());
        String level = HeatIndex.level(air.tempC(), air.rhPct())
                .name()
                .toLowerCase(Locale.ROOT)
                .replace('_', ' ');
        figures.add(new Figure(
                "heat index",
                index.isPresent()
                        ? OptionalDouble.of(Fahrenheit.toCelsius(index.getAsDouble()))
                        : OptionalDouble.empty(),
                "°C",
                OptionalDouble.empty(),
                "NwsHeatIndex",
                Optional.of("category " + level)));
    }

    private void bed(double bed) {
        if (air.rhPct() == 0) {
            return;
        }
        BedClimate climate = BedClimate.of(reading(), temperature(bed));
        add("bed above the dew point", "K", climate.marginK(), "ASHRAE2017");
        if (climate.rhPct().isEmpty()) {
            none("relative humidity at the bed", "%", "ASHRAE2017", "water condenses on the bed");
            none("estimated regain of the cloth", "%", "ClothingModel", "water condenses on the bed");
            return;
        }
        UncertaintyBudget atBed = climate.rhPct().get();
        add("relative humidity at the bed", "%", atBed, "ASHRAE2017");
        regain(
                "estimated regain of the cloth",
                UncertainValue.of(atBed.value(), atBed.standardUncertainty()),
                temperature(bed));
    }

    /** Its error is mostly that of the isotherm, so it is stated always. */
    private void regain(String name, UncertainValue rhPct, UncertainValue tempC) {
        boolean inside = Math.abs(rhPct.value() - 50) < 40 && Math.abs(tempC.value() - 25) < 15;
        if (!inside) {
            none(name, "%", "ClothingModel", "no isotherm outside 10 to 90 %RH and 10 to 40 °C");
            return;
        }
        UncertaintyBudget estimate = new ClothBlend(woolPct, 100 - woolPct).regain(rhPct, tempC);
        figures.add(new Figure(
                name,
                OptionalDouble.of(estimate.value()),
                "% of dry mass",
                OptionalDouble.of(estimate.standardUncertainty()),
                "ClothingModel",
                Optional.of("an estimate; nearly all of its uncertainty is the isotherm's own")));
    }

    private void none(String name, String unit, String reference, String why) {
        figures.add(
                new Figure(name, OptionalDouble.empty(), unit, OptionalDouble.empty(), reference, Optional.of(why)));
    }
}
