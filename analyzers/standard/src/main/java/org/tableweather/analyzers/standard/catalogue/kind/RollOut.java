package org.tableweather.analyzers.standard.catalogue.kind;

import org.tableweather.analyzers.standard.statistics.spread.RollingBall;
import org.tableweather.schema.climate.MoistAir;
import org.tableweather.schema.climate.StandardAtmosphere;
import org.tableweather.schema.record.SessionRecord;
import org.tableweather.schema.record.Trial;

/**
 * What a roll-out says of the cloth. The distance is that of the ball's centre: {@code run_out_m} as logged, or
 * {@code run_out_lengths} times the playing length less a ball's diameter.
 */
public final class RollOut {

    /** Of a sphere, from memory. */
    static final double DRAG_COEFFICIENT = 0.5;
    /** Gas constants of dry air and vapour over their molar masses, J/(kg K). */
    private static final double DRY_AIR = 287.055;

    private static final double VAPOUR = 461.52;
    private static final double ZERO_K = 273.15;
    /** How far a stated roll may be from natural roll. */
    private static final double ROLLING = 0.1;

    private RollOut() {}

    /** Way of the ball's centre to rest, m; NaN when not logged, or when the table's length is needed and not stated. */
    static double travelM(SessionRecord session, Trial trial) {
        double travel =
                Double.isNaN(trial.runOutM()) ? trial.runOutLengths() * Equipment.lengthM(session) : trial.runOutM();
        return travel > 0 ? travel : Double.NaN;
    }

    /**
     * μ of one attempt, air drag taken out; NaN unless the speed at the beginning of the run-out and its length are known,
     * the ball rolled and touched no rail, and the air is known.
     *
     * @source WpaEquipment
     */
    public static double coefficient(SessionRecord session, Trial trial) {
        double travel = travelM(session, trial);
        double density = airDensity(session, trial);
        boolean known = travel > 0 && trial.approachSpeedMps() > 0 && density > 0;
        if (!known || !rolledFreely(session, trial, travel) || !(Equipment.ballKg(session) > 0)) {
            return Double.NaN;
        }
        return new RollingBall(Equipment.ballKg(session), Equipment.ballM(session), DRAG_COEFFICIENT, density)
                .fromDistance(trial.approachSpeedMps(), travel)
                .coefficient();
    }

    // a rail takes far more than the roll; a way longer than the table has touched one
    private static boolean rolledFreely(SessionRecord session, Trial trial, double travel) {
        boolean slid = Math.abs(trial.rollRatio() - 1) > ROLLING;
        boolean touched = trial.rails() > 0 || travel > Equipment.lengthM(session);
        return !slid && !touched;
    }

    /**
     * Density of the moist air, kg/m³, by the gas law for dry air and vapour; pressure of the standard atmosphere at the room's
     * altitude, at sea level when it is not stated; NaN when the climate is not known or outside its ranges.
     *
     * @source HylandWexler1983
     * @source ISO2533
     */
    static double airDensity(SessionRecord session, Trial trial) {
        double tempC = trial.climate().tempC();
        double rhPct = trial.climate().rhPct();
        double altitudeM = session.room().altitudeM().orElse(0);
        if (!(inside(tempC, -40, 60) && inside(rhPct, 0, 100) && inside(altitudeM, -400, 4000))) {
            return Double.NaN;
        }
        double pressure = StandardAtmosphere.pressurePa(altitudeM);
        double vapour = MoistAir.of(tempC, rhPct, pressure).vapourPressurePa();
        double kelvin = tempC + ZERO_K;
        return (pressure - vapour) / (DRY_AIR * kelvin) + vapour / (VAPOUR * kelvin);
    }

    private static boolean inside(double value, double lowest, double highest) {
        return value >= lowest && value <= highest;
    }
}
