package org.tableweather.schema.caution;

import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.caution.Caution.Level;

/** Heaters and dehumidifiers, and whether someone stays with them. */
final class HeaterCautions {
    /** Distance to keep from anything that burns, m (3 ft). */
    static final double CLEARANCE_M = 0.9;

    private HeaterCautions() {}

    /** @source CPSCHeaters */
    static List<Caution> of(HeldClimate climate) {
        List<Appliance> appliances = climate.circuits().stream()
                .flatMap(c -> c.appliances().stream())
                .toList();
        double heating = watts(appliances, Appliance.Kind.HEATER);
        double drying = watts(appliances, Appliance.Kind.DEHUMIDIFIER);
        List<Caution> found = new ArrayList<>();
        if (heating > 0) {
            String advice = "Keep heaters " + CLEARANCE_M
                    + " m from anything that burns, plugged straight into the wall, without extension lead or strip.";
            found.add(Caution.deferring(
                    "heater.clearance", Level.NOTE, advice, CLEARANCE_M, CLEARANCE_M, "m", "CPSCHeaters"));
        }
        if (heating + drying > 0 && climate.attendance() == HeldClimate.Attendance.UNATTENDED) {
            String advice =
                    "Never leave heaters or dehumidifiers running with nobody there to hold a climate: switch off and unplug.";
            found.add(Caution.deferring(
                    "heater.unattended", Level.DANGER, advice, heating + drying, 0, "W", "CPSCHeaters"));
        }
        return found;
    }

    private static double watts(List<Appliance> appliances, Appliance.Kind kind) {
        return appliances.stream()
                .filter(a -> a.kind() == kind)
                .mapToDouble(Appliance::watts)
                .sum();
    }
}
