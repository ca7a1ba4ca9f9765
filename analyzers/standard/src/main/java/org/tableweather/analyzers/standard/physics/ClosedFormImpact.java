package org.tableweather.analyzers.standard.physics;

/**
 * An impact in closed form: Newton's restitution across the rail and Coulomb's friction where the nose meets the ball.
 *
 * <p>With θ the angle of the nose above the ball's middle, c and s its cosine and sine, {@code v} into, {@code u} along the rail
 * and w = Rω: the nose pushes along (−c, −s), the bed takes the downward part, so the ball stays on the cloth and leaves with
 * {@code v' = −e v}. Friction opposes the mean slip over the impact,
 *
 * <pre>{@code s̄ = (u + s w_into − c w_up,  w_along − s v (1 − e)/2)}</pre>
 *
 * along the rail and up the ball's face, with impulse {@code F = −κ s̄}, κ the lesser of Coulomb's {@code μP/|s̄|} and of
 * {@code |s̄|²/(7/2 s̄₁² + 5/2 s̄₂²)}, which takes the most energy and, where the slip is along one direction alone, stops it. P, the
 * nose's impulse, follows from {@code v' = −e v}: {@code P = ((1 + e) v − s F₂)/c}, all per unit of mass. The work of F is
 * {@code −κ|s̄|² + κ²/2 (7/2 s̄₁² + 5/2 s̄₂²) ≤ 0}, that of P {@code −P c v (1 − e)/2}, so no impact gains energy. Nothing rubs on the
 * bed, and the bed is taken to hold the ball down even where rail friction would lift it: both are left to
 * {@link SteppedImpact}.
 *
 * @param rail its properties
 */
public record ClosedFormImpact(RailProperties rail) implements RailImpact {

    private static final double SLIP_ALONG = 3.5;
    private static final double SLIP_UP = 2.5;

    @Override
    public RailMotion after(RailMotion before) {
        double sine = rail.noseSine();
        double cosine = rail.noseCosine();
        double into = before.intoMps();
        double e = rail.restitution().at(into);
        double along = before.alongMps() + sine * before.spinIntoMps() - cosine * before.spinUpMps();
        double up = before.spinAlongMps() - sine * into * (1 - e) / 2;
        double share = share(along, up, (1 + e) * into);
        double alongForce = -share * along;
        double upForce = -share * up;
        return new RailMotion(
                before.alongMps() + alongForce,
                -e * into,
                0,
                before.spinAlongMps() + SLIP_UP * upForce,
                before.spinIntoMps() + SLIP_UP * sine * alongForce,
                before.spinUpMps() - SLIP_UP * cosine * alongForce);
    }

    /** κ: friction's impulse over the slip. */
    private double share(double along, double up, double pushed) {
        double square = along * along + up * up;
        if (square == 0) {
            return 0;
        }
        double slip = Math.sqrt(square);
        double stopping = square / (SLIP_ALONG * along * along + SLIP_UP * up * up);
        // sliding: P = (pushed + s κ s̄₂)/c and κ = μP/|s̄|
        double rubbing = rail.friction() * pushed / (rail.noseCosine() * slip - rail.friction() * rail.noseSine() * up);
        return Math.min(stopping, rubbing);
    }
}
