package org.tableweather.schema.caution;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.climate.MoistAir;

/** Everything to mind for a held climate, in the order heat, damp, condensation, electricity, heaters. */
public final class Cautions {

    private Cautions() {}

    /**
     * The cautions that this climate calls for.
     *
     * @return none, when there is nothing to mind
     */
    public static List<Caution> of(HeldClimate climate) {
        List<Caution> found = new ArrayList<>();
        HeatCautions.of(climate.air()).ifPresent(found::add);
        found.addAll(DampCautions.of(climate.air(), climate.held()));
        climate.bedC().ifPresent(bedC -> found.addAll(ofBed(climate.air(), bedC)));
        climate.circuits().forEach(circuit -> found.addAll(ElectricCautions.of(circuit, climate.held())));
        found.addAll(HeaterCautions.of(climate));
        return List.copyOf(found);
    }

    /**
     * The cautions for a bed of this temperature in this air: water on it, or damp enough at its surface for mould.
     *
     * @param air the room's air
     * @param bedC temperature of the bed, °C
     */
    public static List<Caution> ofBed(MoistAir air, double bedC) {
        return SurfaceCautions.of(air, bedC);
    }
}
