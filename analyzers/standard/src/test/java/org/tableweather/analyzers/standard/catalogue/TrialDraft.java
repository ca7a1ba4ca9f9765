package org.tableweather.analyzers.standard.catalogue;

import java.util.Optional;
import org.tableweather.schema.record.Climate;
import org.tableweather.schema.record.ClimateSource;
import org.tableweather.schema.record.Kind;
import org.tableweather.schema.record.Made;
import org.tableweather.schema.record.Trial;

/** A trial of which only some columns are measured. */
final class TrialDraft {

    private static final double NONE = Double.NaN;

    private final String session;
    private final String id;
    private String shot = "kick-test";
    private Climate climate = Climate.NONE;
    private double angle = NONE;
    private double landing = NONE;
    private double approachAngle = NONE;
    private double approachSpeed = NONE;
    private double reboundSpeed = NONE;

    TrialDraft(String session, int id) {
        this.session = session;
        this.id = Integer.toString(id);
    }

    TrialDraft shot(String other) {
        shot = other;
        return this;
    }

    TrialDraft climate(double tempC, double rhPct) {
        climate = new Climate(tempC, rhPct, ClimateSource.NONE);
        return this;
    }

    TrialDraft angle(double deg) {
        angle = deg;
        return this;
    }

    TrialDraft landing(double dia) {
        landing = dia;
        return this;
    }

    TrialDraft approach(double deg, double mps) {
        approachAngle = deg;
        approachSpeed = mps;
        return this;
    }

    TrialDraft reboundSpeed(double mps) {
        reboundSpeed = mps;
        return this;
    }

    Trial build() {
        return new Trial(
                session,
                id,
                Optional.empty(),
                Kind.KICK,
                shot,
                "",
                NONE,
                NONE,
                approachAngle,
                approachSpeed,
                NONE,
                NONE,
                NONE,
                NONE,
                reboundSpeed,
                angle,
                landing,
                Made.NOT_STATED,
                -1,
                NONE,
                NONE,
                NONE,
                NONE,
                NONE,
                -1,
                NONE,
                NONE,
                "",
                climate);
    }
}
