package org.tableweather.analyzers.standard.physics;

/** A ball between nose and bed: its motion as the nose's impulse grows. The equations stand in {@link SteppedImpact}. */
final class NoseContact {

    /** Slip below this part of the speeds before the impact counts as none. */
    private static final double NO_SLIP = 1e-9;
    /** So does slip that a contact's friction would end within this part of a step. */
    private static final double ENDING = 0.01;
    /** A step is cut at the end of a slip, but not shorter than this part of it. */
    private static final double SHORTEST = 1e-4;

    private final NoseForces forces;
    private final double sine;
    private final double cosine;
    private final double noSlip;
    private final double[] state = new double[6];
    private final double[] kept = new double[6];
    private final double[] rates = new double[6];
    private double noseX;
    private double noseY;
    private double bedX;
    private double bedY;
    private boolean noseSlips;
    private boolean bedSlips;

    NoseContact(RailProperties rail, RailMotion before, double impulse) {
        sine = rail.noseSine();
        cosine = rail.noseCosine();
        forces = new NoseForces(rail.friction(), rail.bedFriction(), sine, cosine);
        state[0] = before.alongMps();
        state[1] = before.intoMps();
        state[2] = Math.max(0, before.upMps());
        state[3] = before.spinAlongMps();
        state[4] = before.spinIntoMps();
        state[5] = before.spinUpMps();
        double friction = Math.max(rail.friction(), rail.bedFriction());
        noSlip = NO_SLIP * Math.sqrt(2 * before.energyPerKg()) + ENDING * friction * impulse;
    }

    RailMotion motion() {
        return new RailMotion(state[0], state[1], state[2], state[3], state[4], state[5]);
    }

    /** Speed of the ball's contact point into the nose, m/s. */
    double approachMps() {
        return cosine * state[1] + sine * state[2];
    }

    private double noseAlong() {
        return state[0] + sine * state[4] - cosine * state[5];
    }

    private double noseUp() {
        return -sine * state[1] + cosine * state[2] + state[3];
    }

    private double bedAlong() {
        return state[0] - state[4];
    }

    private double bedInto() {
        return state[1] + state[3];
    }

    /**
     * Takes a step, cut where a slip comes to its end.
     *
     * @param impulse of the nose per unit of mass, m/s, above 0
     * @return what was taken of it
     */
    double advance(double impulse) {
        System.arraycopy(state, 0, kept, 0, state.length);
        noseX = noseAlong();
        noseY = noseUp();
        bedX = bedAlong();
        bedY = bedInto();
        // whether a contact slips is settled for the whole step: at its middle a slip that ends looks like none
        noseSlips = noseX * noseX + noseY * noseY > noSlip * noSlip;
        bedSlips = bedX * bedX + bedY * bedY > noSlip * noSlip;
        double part = step(impulse);
        if (part == 1) {
            return impulse;
        }
        double cut = impulse * Math.max(part, SHORTEST);
        undo();
        step(cut);
        return cut;
    }

    /** Takes the last step back. */
    void undo() {
        System.arraycopy(kept, 0, state, 0, state.length);
    }

    /** By the midpoint rule; gives the part of the step after which a slip ended, 1 where none did. */
    private double step(double impulse) {
        rate();
        move(impulse / 2);
        double early = turned();
        if (early < 1) {
            undo();
            move(impulse);
            return early / 2;
        }
        rate();
        undo();
        move(impulse);
        return turned();
    }

    private double turned() {
        double nose = noseSlips ? turned(noseX, noseY, noseAlong(), noseUp()) : 1;
        double bed = bedSlips ? turned(bedX, bedY, bedAlong(), bedInto()) : 1;
        return Math.min(nose, bed);
    }

    /** The part of the way after which a slip that turned round was least; 1 where it did not. */
    private static double turned(double x, double y, double laterX, double laterY) {
        double square = x * x + y * y;
        double product = x * laterX + y * laterY;
        return product < 0 ? square / (square - product) : 1;
    }

    private void move(double impulse) {
        for (int i = 0; i < state.length; i++) {
            state[i] += rates[i] * impulse;
        }
        state[2] = Math.max(0, state[2]);
    }

    private void rate() {
        boolean onBed = state[2] == 0;
        forces.onNose(noseAlong(), noseUp(), noseSlips);
        forces.onBed(bedAlong(), bedInto(), bedSlips);
        forces.find(onBed);
        double f1 = forces.noseAlong;
        double f2 = forces.noseUp;
        rates[0] = f1 + forces.bedAlong;
        rates[1] = -cosine - sine * f2 + forces.bedInto;
        rates[2] = onBed && forces.push > 0 ? 0 : -sine + cosine * f2;
        rates[3] = (f2 + forces.bedInto) / Ball.INERTIA;
        rates[4] = (sine * f1 - forces.bedAlong) / Ball.INERTIA;
        rates[5] = -cosine * f1 / Ball.INERTIA;
    }
}
