package org.tableweather.schema.caution;

import java.util.List;
import org.tableweather.schema.caution.Caution.Level;
import org.tableweather.schema.climate.MoistAir;

/** The bed in the room's air. */
final class SurfaceCautions {

    private SurfaceCautions() {}

    /**
     * Water condenses on a bed at or below the dew point; near it the cloth stays damp enough for mould.
     *
     * @source ASHRAE2017
     */
    static List<Caution> of(MoistAir air, double bedC) {
        if (air.condensesOn(bedC)) {
            String advice =
                    "The bed is at or below the air's dew point: it sweats. Warm the table or dry the room before you play.";
            return List.of(Caution.deferring(
                    "condensation.bed", Level.DANGER, advice, bedC, air.dewPointC(), "°C", "ASHRAE2017"));
        }
        double atBed = air.rhPctAt(bedC);
        if (atBed < DampCautions.MOULD_RH_PCT || atBed <= air.rhPct()) {
            return List.of();
        }
        String advice =
                "The bed is colder than the room, and the air at the cloth much damper than the hygrometer says: let it warm up.";
        return List.of(Caution.deferring(
                "damp.bed", Level.CAUTION, advice, atBed, DampCautions.MOULD_RH_PCT, "%", "ASHRAE160"));
    }
}
