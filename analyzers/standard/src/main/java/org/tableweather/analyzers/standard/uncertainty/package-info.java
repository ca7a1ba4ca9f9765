/**
 * Standard uncertainties and the law that carries them from inputs to a result, as the Guide to the Expression of Uncertainty in
 * Measurement has it. Knows numbers only.
 */
package org.tableweather.analyzers.standard.uncertainty;
