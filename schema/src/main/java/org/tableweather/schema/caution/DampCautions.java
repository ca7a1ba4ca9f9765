package org.tableweather.schema.caution;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.tableweather.schema.caution.Caution.Level;
import org.tableweather.schema.climate.MoistAir;

/**
 * A room kept damp. No single humidity of the room's air is known to be safe from mould: what counts is the humidity at the coldest
 * surface, and how long.
 */
final class DampCautions {
    /** Guidance for homes: keep the room's humidity below this, %. */
    static final double HOME_RH_PCT = 60;

    /** Monthly mean at a surface from 5 to 40 °C that the original design rule allows, %. */
    static final double MOULD_RH_PCT = 80;

    /** Dew point that the ventilation standard allows indoors in mechanically cooled buildings, °C. */
    static final double INDOOR_DEW_POINT_C = 15;

    private static final Duration SHORT = Duration.ofDays(2);
    private static final Duration LONG = Duration.ofDays(14);

    private DampCautions() {}

    static List<Caution> of(MoistAir air, Duration held) {
        List<Caution> found = new ArrayList<>();
        if (air.rhPct() >= MOULD_RH_PCT) {
            found.add(mould(air, held));
        } else if (air.rhPct() > HOME_RH_PCT) {
            found.add(aboveHomes(air, held));
        }
        if (air.rhPct() > 0
                && air.vapourPressurePa() > MoistAir.of(INDOOR_DEW_POINT_C, 100).vapourPressurePa()) {
            found.add(dewPoint(air));
        }
        return found;
    }

    /**
     * Mould wants a surface at 80 % or more for weeks; two weeks are taken as weeks, two days as short (common practice, no source).
     *
     * @source ASHRAE160
     */
    private static Caution mould(MoistAir air, Duration held) {
        Level level = held.compareTo(LONG) >= 0 ? Level.DANGER : held.compareTo(SHORT) > 0 ? Level.CAUTION : Level.NOTE;
        String advice = level == Level.NOTE
                ? "Damp enough for mould if it lasted for weeks: keep the series short, then dry room, cloth and walls."
                : "Held this long, mould may grow on walls and under the cloth: shorten the hold and air the room between series.";
        return Caution.deferring("damp.mould", level, advice, air.rhPct(), MOULD_RH_PCT, "%", "ASHRAE160");
    }

    /** @source EPA402 */
    private static Caution aboveHomes(MoistAir air, Duration held) {
        Level level = held.compareTo(LONG) >= 0 ? Level.CAUTION : Level.NOTE;
        String advice =
                "Damper than a home should be kept for long: look for wet corners and windows, and dry the room afterwards.";
        return Caution.deferring("damp.room", level, advice, air.rhPct(), HOME_RH_PCT, "%", "EPA402");
    }

    /** @source ASHRAE621 */
    private static Caution dewPoint(MoistAir air) {
        String advice =
                "Cold pipes, windows and outer walls sweat in this air: keep humid series short in a cooled building.";
        return Caution.deferring(
                "damp.dew-point", Level.NOTE, advice, air.dewPointC(), INDOOR_DEW_POINT_C, "°C", "ASHRAE621");
    }
}
