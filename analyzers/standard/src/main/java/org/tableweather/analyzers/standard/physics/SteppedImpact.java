package org.tableweather.analyzers.standard.physics;

/**
 * An impact followed step by step in the nose's impulse: friction at the nose and on the bed, each slipping or sticking, and
 * energetic restitution. The equations are those of a rigid ball between a rigid nose and the bed, as in Mathavan, Jackson and Parkin
 * 2010; the nose gives back {@code e²} of the work that compressed it.
 *
 * <p>Per unit of mass and of nose impulse P, with the axes along, into and up, {@code f} friction at the nose along the rail and up the
 * ball's face, N and {@code g} push and friction of the bed, w = Rω, c and s as in {@link ClosedFormImpact}:
 *
 * <pre>{@code
 * u' = f₁ + g₁          v' = −c − s f₂ + g₂        z' = −s + c f₂ + N
 * w₁' = 5/2 (f₂ + g₂)   w₂' = 5/2 (s f₁ − g₁)      w₃' = −5/2 c f₁
 * }</pre>
 *
 * N keeps the ball on the bed as long as it pushes; where friction lifts the ball the bed lets go and it rises. A slipping contact
 * rubs against its slip; one that has come to rest sticks as long as friction up to Coulomb's bound can hold it, and else sets off
 * against what it would have needed. Steps are by the midpoint rule, shortened where a slip ends, a compression ends or the work is
 * given back.
 *
 * @param rail its properties
 * @param steps for each compression, at least 1
 * @source Mathavan2010
 * @source Stronge1990
 */
public record SteppedImpact(RailProperties rail, int steps) implements RailImpact {

    /** Work and speeds below this part of what they were count as nought. */
    private static final double NEARLY = 1e-12;
    /** Where rail friction wedges the ball an impact need not end by itself. */
    private static final int MOST_ROUNDS = 50;

    /** Good to 1e-3 of the speed at worst, 1e-4 mostly: {@code PHYSICS.md}. */
    public static final int STANDARD_STEPS = 100;

    /** With {@link #STANDARD_STEPS}. */
    public SteppedImpact(RailProperties rail) {
        this(rail, STANDARD_STEPS);
    }

    /**
     * Checks the steps.
     *
     * @throws IllegalArgumentException below 1
     */
    public SteppedImpact {
        if (steps < 1) {
            throw new IllegalArgumentException("an impact needs at least 1 step, got " + steps);
        }
    }

    @Override
    public RailMotion after(RailMotion before) {
        if (!(before.intoMps() > 0)) {
            return before;
        }
        double step = before.intoMps() / steps;
        NoseContact contact = new NoseContact(rail, before, step);
        double nearly = NEARLY * before.intoMps();
        double stored = 0;
        for (int i = 0; contact.approachMps() > nearly && i < MOST_ROUNDS * steps; i++) {
            stored += compress(contact, step);
        }
        double e = rail.restitution().at(before.intoMps());
        double owed = e * e * stored;
        for (int i = 0; owed > NEARLY * stored && i < MOST_ROUNDS * steps; i++) {
            owed -= giveBack(contact, step, owed);
        }
        return contact.motion();
    }

    // the approach is almost linear in the impulse: a step beyond its end is taken again, cut there
    private static double compress(NoseContact contact, double step) {
        double before = contact.approachMps();
        double taken = contact.advance(step);
        if (contact.approachMps() < 0) {
            double part = before / (before - contact.approachMps());
            contact.undo();
            taken = contact.advance(taken * part);
        }
        return taken * (before + contact.approachMps()) / 2;
    }

    private static double giveBack(NoseContact contact, double step, double owed) {
        double before = contact.approachMps();
        double taken = contact.advance(step);
        double work = -taken * (before + contact.approachMps()) / 2;
        if (work <= owed) {
            return work;
        }
        double slope = (contact.approachMps() - before) / taken;
        contact.undo();
        // the impulse p with −(before p + slope p²/2) = owed
        taken = contact.advance(2 * owed / (Math.sqrt(before * before - 2 * slope * owed) - before));
        return -taken * (before + contact.approachMps()) / 2;
    }
}
