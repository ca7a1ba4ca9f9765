package org.tableweather.analyzers.standard.physics;

/**
 * Where a ball's energy went, J. The work of each friction is force times way, not a difference of energies, so that the
 * balance is a check.
 *
 * @param startJ energy of motion and spin at the start
 * @param slidingJ work of friction while sliding
 * @param rollingJ work of the resistance to rolling
 * @param spinJ work against spin about the vertical
 * @param railJ left in the rails, and in hops off the cloth after them
 * @param endJ energy left at the end
 */
public record EnergyBook(double startJ, double slidingJ, double rollingJ, double spinJ, double railJ, double endJ) {

    /** What was lost and is left, less what there was: 0 but for rounding. */
    public double imbalanceJ() {
        return slidingJ + rollingJ + spinJ + railJ + endJ - startJ;
    }
}
