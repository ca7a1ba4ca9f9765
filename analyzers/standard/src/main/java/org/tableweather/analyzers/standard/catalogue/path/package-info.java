/** How far a path over several rails drifts between two climates, by the fitted rail and the motion of the ball. */
package org.tableweather.analyzers.standard.catalogue.path;
