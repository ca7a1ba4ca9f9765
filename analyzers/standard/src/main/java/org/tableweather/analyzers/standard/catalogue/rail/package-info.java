/** What the climate changes in the rail: restitution or grip. */
package org.tableweather.analyzers.standard.catalogue.rail;
